package surfeit.http.json;

import java.io.IOException;
import java.io.InputStream;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
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
import surfeit.lab.IntakeFaults;
import surfeit.lab.Problem;
import surfeit.spot.Conditions;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/**
 * A correction of a spot, {@code {"reason": ..., "changes": {...}}}: a key replaces what was stated, {@code null}
 * removes it, and each element is replaced by itself. Label, session and acquired time tell spots apart and stay.
 */
public final class CorrectionJson {
    private static final Keys<CorrectionJson> KEYS = new Keys<CorrectionJson>("a correction")
        .key("reason", (in, correction) -> in.skip())
        .key("changes", (in, correction) -> {
            correction.changesGiven = true;
            in.object(CorrectionJson.CHANGES, correction);
        });
    private static final Keys<CorrectionJson> CHANGES = new Keys<CorrectionJson>("the changes of a spot").readingNull()
        .key("particle", text(SpotField.PARTICLE))
        .key("feature", text(SpotField.FEATURE))
        .key("beam_energy_kev", number(SpotField.BEAM_ENERGY_KEV))
        .key("live_time_s", number(SpotField.LIVE_TIME_S))
        .key("feature_size_um", number(SpotField.FEATURE_SIZE_UM))
        .key("total_percent", number(SpotField.TOTAL_PERCENT))
        .key("position", text(SpotField.POSITION))
        .key("tilt_deg", number(SpotField.TILT_DEG))
        .key("role", text(SpotField.ROLE))
        .key("true_composition", (in, correction) -> {
            correction.touched.add(SpotField.TRUE_COMPOSITION);
            correction.composition = in.isNull() ? Optional.empty() : NominalJson.read(in);
        })
        .key("same_material", (in, correction) -> {
            correction.touched.add(SpotField.SAME_MATERIAL);
            correction.sameMaterial = in.yesOrNo().orElse(false);
        })
        .key("unit", (in, correction) -> correction.unit = NominalJson.unit(in))
        .key("elements", (in, correction) ->
            in.entries("an object of element symbols", symbol -> correction.element(in, symbol)))
        .key("label", CorrectionJson::fixed)
        .key("session", CorrectionJson::fixed)
        .key("acquired_time", CorrectionJson::fixed);

    private final Spot present;
    private final SpotDraft draft;
    private final ReadingReader readings;
    private final Set<SpotField> touched = EnumSet.noneOf(SpotField.class);
    private final Map<Element, ReportedValue> values;
    private Optional<Nominal> composition = Optional.empty();
    private Optional<String> role = Optional.empty();
    private Optional<Basis> unit = Optional.empty();
    private boolean sameMaterial;
    private boolean changesGiven;

    private CorrectionJson(IntakeOptions options, Spot present) {
        this.present = present;
        this.draft = new SpotDraft(options, NumberReader.withMark('.'));
        this.readings = new ReadingReader(options.uLevel());
        this.values = new LinkedHashMap<>(present.values());
    }

    /** The reason; empty where none is given. @throws surfeit.lab.ProblemException where the body is no correction */
    public static String reason(InputStream body) throws IOException {
        return ReasonJson.readBeside("changes", "a correction", body);
    }

    /** The spot as corrected. @throws surfeit.lab.ProblemException with every fault */
    public static Spot apply(InputStream body, Spot present, IntakeOptions options) throws IOException {
        return JsonDocument.read(body, in -> {
            CorrectionJson correction = new CorrectionJson(options, present);
            in.object(KEYS, correction);
            if (!correction.changesGiven) {
                in.missing("", "changes", Problem.MALFORMED_JSON, "Expected \"changes\", an object of what changes.");
            }
            return in.faults().count() > 0 ? Optional.empty() : correction.corrected(in);
        });
    }

    private Optional<Spot> corrected(JsonInput in) {
        try {
            draft.set(SpotField.LABEL, present.label());
            draft.unit(unit.orElse(present.basis()));
            values.forEach(draft::put);
            boolean referenceTouched = touched.contains(SpotField.ROLE) || touched.contains(SpotField.TRUE_COMPOSITION)
                || touched.contains(SpotField.SAME_MATERIAL);
            if (referenceTouched) {
                setReference();
            }
            Spot made = draft.build();
            return Optional.of(new Spot(present.label(),
                chosen(SpotField.PARTICLE, made.particle(), present.particle()),
                chosen(SpotField.FEATURE, made.feature(), present.feature()), present.session(),
                present.acquiredTime(), conditions(made.conditions()),
                referenceTouched ? made.reference() : present.reference(), made.basis(), made.values()));
        } catch (Refusal refusal) {
            String place = "/changes" + refusal.field().map(field -> "/" + field.text()).orElse("");
            in.faults().add(place, IntakeFaults.problem(refusal.code()), "", refusal.getMessage());
            return Optional.empty();
        }
    }

    private void setReference() {
        boolean isReference = role.map(word -> word.equals("reference")).orElse(present.isReference());
        draft.set(SpotField.ROLE, role.orElse(isReference ? "reference" : "specimen"));
        Optional<Nominal> stated = touched.contains(SpotField.TRUE_COMPOSITION) ? composition
            : isReference ? present.reference().map(piece -> piece.trueComposition()) : Optional.empty();
        stated.ifPresent(draft::trueComposition);
        boolean same = touched.contains(SpotField.SAME_MATERIAL) ? sameMaterial
            : isReference && present.reference().map(piece -> piece.sameMaterial()).orElse(false);
        draft.set(SpotField.SAME_MATERIAL, Boolean.toString(same));
    }

    private Conditions conditions(Conditions made) {
        Conditions old = present.conditions();
        return new Conditions(chosen(SpotField.BEAM_ENERGY_KEV, made.beamEnergyKev(), old.beamEnergyKev()),
            chosen(SpotField.LIVE_TIME_S, made.liveTimeS(), old.liveTimeS()),
            chosen(SpotField.FEATURE_SIZE_UM, made.featureSizeUm(), old.featureSizeUm()),
            chosen(SpotField.TOTAL_PERCENT, made.rawTotal(), old.rawTotal()),
            chosen(SpotField.POSITION, made.position(), old.position()),
            chosen(SpotField.TILT_DEG, made.tiltDeg(), old.tiltDeg()));
    }

    private <T> T chosen(SpotField field, T changed, T old) {
        return touched.contains(field) ? changed : old;
    }

    private void element(JsonInput in, String symbol) throws IOException {
        Optional<Element> element = NominalJson.element(in, symbol);
        if (element.isPresent() && in.isNull()) {
            values.remove(element.get());
            return;
        }
        Optional<ReportedValue> value = readings.read(in);
        if (element.isPresent() && value.isPresent()) {
            values.put(element.get(), value.get());
        }
    }

    private static Keys.Reader<CorrectionJson> text(SpotField field) {
        return (in, correction) -> {
            Optional<String> text = in.isNull() ? Optional.of("") : in.text();
            if (text.isPresent()) {
                correction.touch(in, field, text.get());
            }
        };
    }

    private static Keys.Reader<CorrectionJson> number(SpotField field) {
        return (in, correction) -> {
            if (in.isNull() || in.isNumber()) {
                correction.touch(in, field, in.isNull() ? "" : in.asWritten());
            } else {
                in.wrongKind("a number, or null");
            }
        };
    }

    private void touch(JsonInput in, SpotField field, String text) throws IOException {
        touched.add(field);
        if (field == SpotField.ROLE) {
            role = Optional.of(text);
            return;
        }
        try {
            draft.set(field, text);
        } catch (Refusal refusal) {
            in.fault(IntakeFaults.problem(refusal.code()), refusal.getMessage());
        }
    }

    private static void fixed(JsonInput in, CorrectionJson correction) throws IOException {
        in.fault(Problem.NAME_INVALID, "Label, session and acquired time tell spots apart and stay as they are; "
            + "withdraw the spot and import it anew.");
        in.skip();
    }
}
