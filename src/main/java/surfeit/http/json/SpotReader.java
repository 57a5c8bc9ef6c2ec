package surfeit.http.json;

import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.element.Element;
import surfeit.intake.IntakeOptions;
import surfeit.intake.NumberReader;
import surfeit.intake.Refusal;
import surfeit.intake.SpotDraft;
import surfeit.intake.SpotField;
import surfeit.lab.Problem;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/** Reads one spot after another. Not thread-safe: one per body. */
final class SpotReader {
    private static final Keys<SpotReader> KEYS = new Keys<SpotReader>("a spot")
        .key("label", SpotReader.text(SpotField.LABEL))
        .key("particle", SpotReader.text(SpotField.PARTICLE))
        .key("feature", SpotReader.text(SpotField.FEATURE))
        .key("session", SpotReader.text(SpotField.SESSION))
        .key("acquired_time", SpotReader.text(SpotField.ACQUIRED_TIME))
        .key("beam_energy_kev", SpotReader.number(SpotField.BEAM_ENERGY_KEV))
        .key("live_time_s", SpotReader.number(SpotField.LIVE_TIME_S))
        .key("feature_size_um", SpotReader.number(SpotField.FEATURE_SIZE_UM))
        .key("total_percent", SpotReader.number(SpotField.TOTAL_PERCENT))
        .key("role", SpotReader.text(SpotField.ROLE))
        .key("true_composition", (in, spot) -> {
            Optional<Nominal> nominal = NominalJson.read(in);
            nominal.ifPresent(spot.draft::trueComposition);
        })
        .key("same_material", (in, spot) -> {
            Optional<Boolean> same = in.yesOrNo();
            if (same.isPresent()) {
                spot.set(in, SpotField.SAME_MATERIAL, same.get().toString());
            }
        })
        .key("position", SpotReader.text(SpotField.POSITION))
        .key("tilt_deg", SpotReader.number(SpotField.TILT_DEG))
        .key("unit", (in, spot) -> {
            spot.unitGiven = true;
            Optional<Basis> unit = NominalJson.unit(in);
            if (unit.isPresent()) {
                spot.set(in, SpotField.UNIT, unit.get().unit());
            }
        })
        .key("elements", (in, spot) -> in.entries("an object of element symbols", symbol -> spot.element(in, symbol)));

    private final SpotDraft draft;
    private final ReadingReader readings;
    private final Set<Element> seen = new HashSet<>();
    private boolean unitGiven;

    SpotReader(IntakeOptions options) {
        draft = new SpotDraft(options, NumberReader.withMark('.'));
        readings = new ReadingReader(options.uLevel());
    }

    private static Keys.Reader<SpotReader> text(SpotField field) {
        return (in, spot) -> {
            Optional<String> text = in.text();
            if (text.isPresent()) {
                spot.set(in, field, text.get());
            }
        };
    }

    private static Keys.Reader<SpotReader> number(SpotField field) {
        return (in, spot) -> {
            if (in.isNumber()) {
                spot.set(in, field, in.asWritten());
            } else {
                in.wrongKind("a number");
            }
        };
    }

    /**
     * Reads the spot the input stands on; empty where a fault was noted.
     *
     * @param unit    unit of a spot that names none
     * @param session session of a spot that names none
     */
    Optional<Spot> read(JsonInput in, Optional<Basis> unit, Optional<String> session) throws IOException {
        String pointer = in.pointer();
        long before = in.faults().count();
        draft.clear();
        seen.clear();
        readings.takeNotKept();
        unitGiven = false;
        if (session.isPresent()) {
            set(in, SpotField.SESSION, session.get());
        }
        in.object(KEYS, this);
        if (in.faults().count() > before) {
            return Optional.empty();
        }
        try {
            if (!unitGiven) {
                unit.ifPresent(draft::unit);
            }
            return Optional.of(draft.build());
        } catch (Refusal refusal) {
            String place = refusal.field().map(field -> pointer + "/" + field.text()).orElse(pointer);
            in.faults().add(place, "", refusal);
            return Optional.empty();
        }
    }

    /** What the spot says beside values that cannot keep it. */
    List<ReadingReader.NotKept> takeNotKept() {
        return readings.takeNotKept();
    }

    private void element(JsonInput in, String symbol) throws IOException {
        Optional<Element> element = NominalJson.element(in, symbol);
        if (element.isPresent() && !seen.add(element.get())) {
            in.fault(Problem.MALFORMED_JSON, "\"" + symbol + "\" stands twice in one object.");
            in.skip();
            return;
        }
        Optional<ReportedValue> value = readings.read(in);
        if (element.isEmpty() || value.isEmpty()) {
            return;
        }
        try {
            draft.put(element.get(), value.get());
        } catch (Refusal refusal) {
            in.fault(refusal);
        }
    }

    private void set(JsonInput in, SpotField field, String text) throws IOException {
        try {
            draft.set(field, text);
        } catch (Refusal refusal) {
            in.fault(refusal);
        }
    }
}
