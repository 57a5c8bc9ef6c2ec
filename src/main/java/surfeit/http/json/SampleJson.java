package surfeit.http.json;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.Supplier;
import surfeit.composition.Nominal;
import surfeit.element.Element;
import surfeit.lab.Problem;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Coating;
import surfeit.spot.Form;
import surfeit.spot.Judgement;
import surfeit.spot.PreparationStep;
import surfeit.spot.Sample;
import surfeit.spot.SpotCentre;

/** Reads the description of a sample. */
public final class SampleJson {
    /** Longest text of a description or a mount; it is shown in lists. */
    private static final int DESCRIPTION_LENGTH_MAX = 10_000;
    private static final int STEPS_MAX = 200;

    private static final Keys<SampleFields> KEYS = new Keys<SampleFields>("a sample")
        .key("alloy", (in, sample) -> sample.alloy = word(in))
        .key("nominal", (in, sample) -> {
            sample.nominalGiven = true;
            sample.nominal = nominal(in);
        })
        .key("excluded_elements", (in, sample) -> in.array("a list of element symbols", () -> {
            Optional<String> symbol = in.text();
            if (symbol.isPresent()) {
                NominalJson.element(in, symbol.get()).ifPresent(sample.excludedElements::add);
            }
        }))
        .key("accuracy_class", (in, sample) ->
            oneOf(in, AccuracyClass.values(), AccuracyClass::words).ifPresent(value -> sample.accuracyClass = value))
        .key("form", (in, sample) -> oneOf(in, Form.values(), Form::words).ifPresent(value -> sample.form = value))
        .key("beam_energy_kev", (in, sample) -> sample.beamEnergyKev = geometry(in, "keV", 0))
        .key("take_off_angle_deg", (in, sample) -> sample.takeOffAngleDeg = geometry(in, "degrees", 1))
        .key("detector_fwhm_ev", (in, sample) -> sample.detectorFwhmEv = geometry(in, "eV", 2))
        .key("particle_diameter_um", (in, sample) -> sample.particleDiameterUm = geometry(in, "um", 3))
        .key("coating", (in, sample) -> sample.coating = coating(in))
        .key("mount", (in, sample) -> sample.mount = shortText(in))
        .key("margin_odds_ratio", (in, sample) ->
            number(in, value -> judgement(value, 0.05, 1, 0.9)).ifPresent(value -> sample.marginOddsRatio = value))
        .key("alpha", (in, sample) ->
            number(in, value -> judgement(1.25, value, 1, 0.9)).ifPresent(value -> sample.alpha = value))
        .key("u_level", (in, sample) -> level(in).ifPresent(value -> sample.uLevel = value))
        .key("reference_correlation", (in, sample) ->
            number(in, value -> judgement(1.25, 0.05, 1, value))
                .ifPresent(value -> sample.referenceCorrelation = value))
        .key("spot_centre", (in, sample) ->
            oneOf(in, SpotCentre.values(), SpotCentre::words).ifPresent(value -> sample.spotCentre = value))
        .key("preparation", (in, sample) -> in.array("a list of steps", () -> step(in, sample.preparation)))
        .key("diffraction_phases", (in, sample) ->
            in.array("a list of phases", () -> shortText(in).ifPresent(sample.diffractionPhases::add)))
        .key("description", (in, sample) -> shortText(in).ifPresent(text -> sample.description = text))
        .key("spots_independent", (in, sample) -> in.yesOrNo().ifPresent(value -> sample.spotsIndependent = value))
        .ignored("sample", "revision", "changed_time", "links");

    private static final Keys<CoatingFields> COATING = new Keys<CoatingFields>("a coating")
        .key("element", (in, coating) -> {
            Optional<String> symbol = in.text();
            coating.element = symbol.isPresent() ? NominalJson.element(in, symbol.get()) : Optional.empty();
        })
        .key("thickness_nm", (in, coating) -> coating.thicknessNm = in.number("nm"));

    private static final Keys<StepFields> STEP = new Keys<StepFields>("a step of the preparation")
        .key("step", (in, step) -> step.step = shortText(in))
        .key("reagent", (in, step) -> step.reagent = shortText(in));

    private SampleJson() {
    }

    private static final class CoatingFields {
        private Optional<Element> element = Optional.empty();
        private OptionalDouble thicknessNm = OptionalDouble.empty();
    }

    private static final class StepFields {
        private Optional<String> step = Optional.empty();
        private Optional<String> reagent = Optional.empty();
    }

    /** Reads a body that is the description of a sample. @throws surfeit.lab.ProblemException with every fault */
    public static Sample read(InputStream body) throws IOException {
        return JsonDocument.read(body, SampleJson::read);
    }

    /** As {@link #read(InputStream)}, for a sample whose nominal composition is stated elsewhere. */
    public static Sample read(InputStream body, Nominal nominal) throws IOException {
        return JsonDocument.read(body, in -> read(in, Optional.of(nominal)));
    }

    /** Reads the object the input stands on; empty where a fault was noted. */
    static Optional<Sample> read(JsonInput in) throws IOException {
        return read(in, Optional.empty());
    }

    private static Optional<Sample> read(JsonInput in, Optional<Nominal> nominal) throws IOException {
        String pointer = in.pointer();
        long before = in.faults().count();
        SampleFields fields = new SampleFields();
        fields.nominal = nominal;
        fields.nominalGiven = nominal.isPresent();
        if (in.object(KEYS, fields) && fields.alloy.isEmpty() && !fields.nominalGiven) {
            in.missing(pointer, "nominal", Problem.NOMINAL_INCOMPLETE,
                "Expected \"alloy\" (a name of the catalogue) or \"nominal\" (a composition), got neither.");
        }
        return in.faults().count() > before ? Optional.empty() : Optional.of(fields.sample());
    }

    /** A sample is compared with it, which takes two elements; the composition of a reference piece may have one. */
    private static Optional<Nominal> nominal(JsonInput in) throws IOException {
        String pointer = in.pointer();
        Optional<Nominal> nominal = NominalJson.read(in);
        if (nominal.isPresent() && nominal.get().elements().size() < 2) {
            in.faults().add(pointer + "/elements", Problem.TOO_FEW_ELEMENTS, "",
                "Expected at least two elements to compare, got " + nominal.get().elements() + ".");
        }
        return nominal;
    }

    private static Judgement judgement(double margin, double alpha, int level, double correlation) {
        return new Judgement(margin, alpha, level, correlation, SpotCentre.MEAN);
    }

    /** Tries a value where it belongs, so that the limits are told once: by the record that has them. */
    private static boolean fits(JsonInput in, Supplier<?> trial) throws IOException {
        try {
            trial.get();
            return true;
        } catch (IllegalArgumentException e) {
            in.fault(Problem.VALUE_OUT_OF_RANGE, e.getMessage());
            return false;
        }
    }

    private static OptionalDouble number(JsonInput in, Function<Double, ?> trial) throws IOException {
        OptionalDouble value = in.number("");
        return value.isPresent() && fits(in, () -> trial.apply(value.getAsDouble())) ? value : OptionalDouble.empty();
    }

    private static OptionalDouble geometry(JsonInput in, String unit, int place) throws IOException {
        OptionalDouble value = in.number(unit);
        OptionalDouble[] all = new OptionalDouble[4];
        Arrays.fill(all, OptionalDouble.empty());
        all[place] = value;
        return fits(in, () -> new Sample.Geometry(all[0], all[1], all[2], all[3])) ? value : OptionalDouble.empty();
    }

    private static OptionalInt level(JsonInput in) throws IOException {
        OptionalDouble value = in.number("");
        if (value.isEmpty()) {
            return OptionalInt.empty();
        }
        if (value.getAsDouble() != Math.rint(value.getAsDouble())) {
            in.fault(Problem.VALUE_OUT_OF_RANGE, "u_level must be 1, 2 or 3, got " + in.asWritten() + ".");
            return OptionalInt.empty();
        }
        int level = (int) value.getAsDouble();
        return fits(in, () -> judgement(1.25, 0.05, level, 0.9)) ? OptionalInt.of(level) : OptionalInt.empty();
    }

    private static Optional<Coating> coating(JsonInput in) throws IOException {
        String pointer = in.pointer();
        long before = in.faults().count();
        CoatingFields fields = new CoatingFields();
        in.object(COATING, fields);
        if (in.faults().count() > before) {
            return Optional.empty();
        }
        if (fields.element.isEmpty()) {
            in.missing(pointer, "element", Problem.UNKNOWN_ELEMENT, "Expected the element the coating is made of.");
            return Optional.empty();
        }
        try {
            return Optional.of(new Coating(fields.element.get(), fields.thicknessNm));
        } catch (IllegalArgumentException e) {
            in.faults().add(pointer + "/thickness_nm", Problem.VALUE_OUT_OF_RANGE, "", e.getMessage());
            return Optional.empty();
        }
    }

    private static void step(JsonInput in, List<PreparationStep> steps) throws IOException {
        String pointer = in.pointer();
        StepFields fields = new StepFields();
        long before = in.faults().count();
        in.object(STEP, fields);
        if (in.faults().count() > before) {
            return;
        }
        if (fields.step.isEmpty()) {
            in.missing(pointer, "step", Problem.MALFORMED_JSON, "Expected what was done in this step.");
        } else if (steps.size() == STEPS_MAX) {
            in.faults().add(pointer, Problem.VALUE_OUT_OF_RANGE, "", "A sample has at most " + STEPS_MAX
                + " steps of preparation.");
        } else {
            steps.add(new PreparationStep(fields.step.get(), fields.reagent));
        }
    }

    private static Optional<String> word(JsonInput in) throws IOException {
        Optional<String> text = shortText(in);
        if (text.isPresent() && text.get().isBlank()) {
            in.fault(Problem.MALFORMED_JSON, "Expected a name, got an empty text.");
            return Optional.empty();
        }
        return text;
    }

    private static Optional<String> shortText(JsonInput in) throws IOException {
        Optional<String> text = in.text();
        if (text.isPresent() && text.get().length() > DESCRIPTION_LENGTH_MAX) {
            in.fault(Problem.VALUE_OUT_OF_RANGE, "Expected a text of at most " + DESCRIPTION_LENGTH_MAX
                + " characters, got "
                + text.get().length() + ".");
            return Optional.empty();
        }
        return text;
    }

    /** One of a closed list of words. */
    static <E> Optional<E> oneOf(JsonInput in, E[] values, Function<E, String> words) throws IOException {
        Optional<String> text = in.text();
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Optional<E> found = Arrays.stream(values).filter(value -> words.apply(value).equals(text.get())).findFirst();
        if (found.isEmpty()) {
            List<String> known = Arrays.stream(values).map(words).toList();
            in.fault(Problem.VALUE_OUT_OF_RANGE, "Expected " + String.join(", ", known) + ", got \""
                + JsonFaults.shown(text.get())
                + "\"" + Nearest.hint(text.get(), known));
        }
        return found;
    }
}
