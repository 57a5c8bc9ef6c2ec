package surfeit.composition;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.element.Element;
import surfeit.element.ReferenceTable;
import surfeit.element.Spelling;

/**
 * Alloys by id: the packaged ones with their handbook phases, and any a lab adds. Immutable, thread-safe.
 *
 * <p>Sources: the {@code source} column of {@code shared/reference/alloys.csv} and {@code phases.csv}, row by row;
 * {@code source_read} says which figures are from memory.
 */
public final class AlloyCatalogue {
    private static final int SUGGESTIONS = 3;

    private final Map<String, Alloy> byId;
    private final List<OfSystem> phases;

    /** A handbook phase and the elements of its system. */
    private record OfSystem(Phase phase, Set<Element> elements) {
    }

    private AlloyCatalogue(Map<String, Alloy> byId, List<OfSystem> phases) {
        this.byId = Collections.unmodifiableMap(byId);
        this.phases = phases;
    }

    /** The packaged catalogue, read once. */
    public static AlloyCatalogue packaged() {
        return Holder.PACKAGED;
    }

    /** This catalogue and a lab's own alloys; an own alloy hides a packaged one of the same id. */
    public AlloyCatalogue with(Collection<Alloy> own) {
        Map<String, Alloy> all = new LinkedHashMap<>(byId);
        own.forEach(alloy -> all.put(alloy.id(), alloy));
        return new AlloyCatalogue(all, phases);
    }

    /** The alloy with exactly this id, if there is one. */
    public Optional<Alloy> byId(String id) {
        return Optional.ofNullable(byId.get(id));
    }

    /** The alloy with this id. @throws UnknownAlloyException where there is none, with the nearest ids */
    public Alloy require(String id) {
        return byId(id).orElseThrow(() -> new UnknownAlloyException(id, nearest(id)));
    }

    /** All alloys, packaged ones first, in the order of their table. */
    public Collection<Alloy> all() {
        return byId.values();
    }

    /** Ids a mistyped one most likely meant: the same words in other order first, then misspelt ids, then names. */
    public List<String> nearest(String id) {
        List<String> found = new ArrayList<>();
        byId.keySet().stream().filter(known -> words(known).equals(words(id))).forEach(found::add);
        found.addAll(Spelling.nearest(id.replace(' ', '-').replace('_', '-'), byId.keySet(), SUGGESTIONS));
        List<String> names = byId.values().stream().map(Alloy::name).toList();
        Spelling.nearest(id, names, SUGGESTIONS).forEach(name ->
            byId.values().stream().filter(alloy -> alloy.name().equals(name)).map(Alloy::id).forEach(found::add));
        return found.stream().distinct().limit(SUGGESTIONS).toList();
    }

    private static List<String> words(String id) {
        return Arrays.stream(id.strip().toLowerCase(Locale.ROOT).split("[\\s_-]+")).sorted().toList();
    }

    /**
     * The handbook phases of the systems inside a nominal: every system whose elements the alloy must contain and one
     * of which is its main element.
     *
     * <p>An element that may be absent (range from zero) brings no phases, and neither do two minor elements between
     * themselves: SAC305 gets the phases of Ag-Sn and Cu-Sn, not of Ag-Cu. With three elements or more these are
     * phases of the subsystems and only neighbours of the alloy's own; {@link Phase#system} says whose they are.
     * Judgement.
     */
    public List<Phase> phasesOf(Nominal nominal) {
        return phasesOf(nominal, phases);
    }

    private static List<Phase> phasesOf(Nominal nominal, List<OfSystem> phases) {
        NominalFractions fractions = nominal.resolve();
        int main = 0;
        Set<Element> always = new HashSet<>();
        for (int i = 0; i < fractions.size(); i++) {
            main = fractions.middle(i) > fractions.middle(main) ? i : main;
            if (fractions.low(i) > 0) {
                always.add(fractions.elements().get(i));
            }
        }
        Element mainElement = fractions.elements().get(main);
        List<Phase> found = new ArrayList<>();
        for (OfSystem each : phases) {
            if (each.elements().contains(mainElement) && always.containsAll(each.elements())) {
                found.add(each.phase());
            }
        }
        return List.copyOf(found);
    }

    private static AlloyCatalogue read() {
        List<OfSystem> phases = ReferenceTable.packaged("phases.csv").rows().stream().map(AlloyCatalogue::phase)
            .map(phase -> new OfSystem(phase, phase.systemElements())).toList();
        Map<String, Alloy> byId = new LinkedHashMap<>();
        for (Map<String, String> row : ReferenceTable.packaged("alloys.csv").rows()) {
            Nominal nominal = composition(row);
            byId.put(row.get("id"), new Alloy(row.get("id"), row.get("name"), nominal,
                Optional.of(new StatedTemperature(row.get("temperature_c"), row.get("temperature_kind"))),
                row.get("source"), SourceRead.of(row.get("source_read")), phasesOf(nominal, phases)));
        }
        return new AlloyCatalogue(byId, phases);
    }

    private static Phase phase(Map<String, String> row) {
        return Phase.of(row.get("system"), row.get("phase"), composition(row),
            OptionalDouble.of(Double.parseDouble(row.get("density_g_cm3"))), row.get("role"),
            OptionalDouble.of(Double.parseDouble(row.get("temperature_c"))), row.get("source"),
            SourceRead.of(row.get("source_read")));
    }

    private static Nominal composition(Map<String, String> row) {
        Basis basis = Basis.ofUnit(row.get("unit"))
            .orElseThrow(() -> new IllegalStateException("Expected at% or wt%, got \"" + row.get("unit") + "\"."));
        return NominalText.parse(row.get("composition"), basis);
    }

    private static final class Holder {
        private static final AlloyCatalogue PACKAGED = read();
    }
}
