package surfeit.http.json;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import surfeit.composition.Alloy;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Nominal;
import surfeit.composition.Phase;
import surfeit.composition.SourceRead;
import surfeit.composition.StatedTemperature;
import surfeit.element.Element;
import surfeit.lab.Problem;

/**
 * Reads a lab's own statement of an alloy: its nominal composition, where that is from, and what else is known of it.
 *
 * <p>A statement without phases takes the handbook's of its nominal, and shows them; a list states all of them.
 */
public final class AlloyJson {
    private static final Keys<Fields> KEYS = new Keys<Fields>("an alloy")
        .key("name", (in, fields) -> fields.name = in.text())
        .key("nominal", (in, fields) -> {
            fields.nominalGiven = true;
            fields.nominal = NominalJson.read(in);
        })
        .key("melting", (in, fields) -> fields.melting = melting(in))
        .key("phases", (in, fields) -> {
            fields.phasesGiven = true;
            in.array("a list of phases", () -> fields.phases.add(phase(in)));
        })
        .key("source", (in, fields) -> fields.source = in.text())
        .key("source_read", (in, fields) ->
            SampleJson.oneOf(in, SourceRead.values(), SourceRead::words).ifPresent(value -> fields.sourceRead = value))
        .ignored("alloy", "revision", "origin", "changed_time", "changed_by", "links");

    private static final Keys<Melting> MELTING = new Keys<Melting>("a melting temperature")
        .key("temperature_c", (in, melting) -> melting.celsius = in.text().orElse(""))
        .key("kind", (in, melting) -> melting.kind = in.text().orElse(""));

    private static final Keys<PhaseFields> PHASE = new Keys<PhaseFields>("a phase")
        .key("name", (in, phase) -> phase.name = in.text().orElse(""))
        .key("system", (in, phase) -> phase.system = in.text())
        .key("composition", (in, phase) -> phase.composition = NominalJson.read(in))
        .key("density_g_per_cm3", (in, phase) -> phase.density = in.number("g/cm3"))
        .key("role", (in, phase) -> phase.role = in.text().orElse(""))
        .key("temperature_c", (in, phase) -> phase.temperature = in.number("°C"))
        .key("source", (in, phase) -> phase.source = in.text())
        .key("source_read", (in, phase) ->
            SampleJson.oneOf(in, SourceRead.values(), SourceRead::words).ifPresent(value -> phase.sourceRead = value));

    private AlloyJson() {
    }

    private static final class Fields {
        private Optional<String> name = Optional.empty();
        private Optional<Nominal> nominal = Optional.empty();
        private boolean nominalGiven;
        private Optional<StatedTemperature> melting = Optional.empty();
        private boolean phasesGiven;
        private final List<PhaseFields> phases = new ArrayList<>();
        private Optional<String> source = Optional.empty();
        private SourceRead sourceRead = SourceRead.YES;
    }

    private static final class Melting {
        private String celsius = "";
        private String kind = "";
    }

    private static final class PhaseFields {
        private String pointer = "";
        private String name = "";
        private Optional<String> system = Optional.empty();
        private Optional<Nominal> composition = Optional.empty();
        private OptionalDouble density = OptionalDouble.empty();
        private String role = "";
        private OptionalDouble temperature = OptionalDouble.empty();
        private Optional<String> source = Optional.empty();
        private SourceRead sourceRead = SourceRead.YES;
    }

    /** Reads a body that states the alloy with this id. @throws surfeit.lab.ProblemException with every fault */
    public static Alloy read(String id, InputStream body) throws IOException {
        return JsonDocument.read(body, in -> {
            long before = in.faults().count();
            Fields fields = new Fields();
            if (in.object(KEYS, fields)) {
                requireStated(in, fields);
            }
            return in.faults().count() > before ? Optional.empty() : alloy(in, id, fields);
        });
    }

    private static void requireStated(JsonInput in, Fields fields) {
        if (!fields.nominalGiven) {
            in.missing("", "nominal", Problem.NOMINAL_INCOMPLETE,
                "Expected \"nominal\", the composition the alloy should have.");
        }
        if (fields.source.map(String::isBlank).orElse(true)) {
            in.missing("", "source", Problem.MALFORMED_JSON,
                "Expected \"source\", where the composition comes from: a certificate, a standard, a book.");
        }
    }

    private static Optional<Alloy> alloy(JsonInput in, String id, Fields fields) {
        Nominal nominal = fields.nominal.orElseThrow();
        List<Phase> phases = new ArrayList<>(
            fields.phasesGiven ? List.of() : AlloyCatalogue.packaged().phasesOf(nominal));
        for (PhaseFields each : fields.phases) {
            made(in, each.pointer, () -> phase(each, nominal, fields.source.orElseThrow())).ifPresent(phases::add);
        }
        return fields.phasesGiven && phases.size() < fields.phases.size() ? Optional.empty()
            : made(in, "", () -> new Alloy(id, fields.name.orElse(id), nominal, fields.melting,
                fields.source.orElseThrow(), fields.sourceRead, phases));
    }

    private static Phase phase(PhaseFields fields, Nominal nominal, String alloySource) {
        String system = fields.system.orElseGet(() ->
            nominal.elements().stream().map(Element::symbol).collect(Collectors.joining("-")));
        Nominal composition = fields.composition.orElseThrow(() ->
            new IllegalArgumentException("Expected the composition of the phase."));
        return Phase.of(system, fields.name, composition, fields.density, fields.role, fields.temperature,
            fields.source.orElse(alloySource), fields.sourceRead);
    }

    private static PhaseFields phase(JsonInput in) throws IOException {
        PhaseFields fields = new PhaseFields();
        fields.pointer = in.pointer();
        in.object(PHASE, fields);
        return fields;
    }

    private static Optional<StatedTemperature> melting(JsonInput in) throws IOException {
        String pointer = in.pointer();
        Melting fields = new Melting();
        long before = in.faults().count();
        in.object(MELTING, fields);
        return in.faults().count() > before ? Optional.empty()
            : made(in, pointer, () -> new StatedTemperature(fields.celsius, fields.kind));
    }

    /** Something whose own check says what is wrong with it. */
    private interface Maker<T> {
        T make();
    }

    private static <T> Optional<T> made(JsonInput in, String pointer, Maker<T> maker) {
        try {
            return Optional.of(maker.make());
        } catch (IllegalArgumentException e) {
            in.faults().add(pointer, Problem.VALUE_OUT_OF_RANGE, "", e.getMessage());
            return Optional.empty();
        }
    }
}
