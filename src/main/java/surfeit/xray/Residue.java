package surfeit.xray;

import java.util.Collections;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import surfeit.element.Element;

/**
 * A compound that may lie on a surface without belonging to the alloy: oil, oxide, polishing medium, etch product.
 *
 * <p>Composition by formula and standard atomic weights. {@code densityGramPerCm3} as in its {@code source}.
 * What a residue could explain is an UPPER bound: carbon build-up, other oxides and adsorbed gases bring the same light
 * elements, and standardless light-element results are themselves uncertain by 30 to 50 % (from memory). It is
 * reported as "could be explained by", never subtracted. A film and a bulk mixture differ: see {@link ThinFilm}.
 * Immutable, thread-safe.
 */
public record Residue(String id, String name, String kind, SortedMap<Element, Integer> atoms, double densityGramPerCm3,
                      String source) {
    private static final Pattern PART = Pattern.compile("([A-Z][a-z]?)(\\d*)");
    private static final int HYDROGEN = 1;

    /** A residue from its formula, for example {@code C2H6OSi}. */
    static Residue ofFormula(String id, String name, String kind, String formula, double density, String source) {
        SortedMap<Element, Integer> atoms = new TreeMap<>();
        Matcher part = PART.matcher(formula);
        int end = 0;
        while (part.find() && part.start() == end) {
            int count = part.group(2).isEmpty() ? 1 : Integer.parseInt(part.group(2));
            atoms.merge(Element.of(part.group(1)), count, Integer::sum);
            end = part.end();
        }
        if (end != formula.length() || atoms.isEmpty()) {
            throw new IllegalArgumentException("Expected a formula such as Al2O3, got \"" + formula + "\".");
        }
        return new Residue(id, name, kind, Collections.unmodifiableSortedMap(atoms), density, source);
    }

    /** Mass fractions of all its elements. */
    public SortedMap<Element, Double> massFractions() {
        return fractions(true, false);
    }

    /** Mass fractions as EDS sees them: without hydrogen, normalised. */
    public SortedMap<Element, Double> visibleMassFractions() {
        return fractions(true, true);
    }

    /** Atomic fractions as EDS sees them: without hydrogen, normalised. */
    public SortedMap<Element, Double> visibleAtomicFractions() {
        return fractions(false, true);
    }

    /** The residue as a film's material. */
    public Material material() {
        return Material.of(massFractions(), densityGramPerCm3);
    }

    /** Atoms of one element per atom of another, both of the residue. */
    public double atomicRatio(Element wanted, Element marker) {
        return (double) count(wanted) / count(marker);
    }

    /** Mass of one element per mass of another, both of the residue. */
    public double massRatio(Element wanted, Element marker) {
        return atomicRatio(wanted, marker) * wanted.atomicWeight() / marker.atomicWeight();
    }

    /**
     * At most how much of an element the residue can account for, given what else of it was found; atomic fractions.
     *
     * <p>The scarcest of its other visible elements decides; one that was not found makes it 0. Empty where the residue
     * has no other visible element to go by.
     */
    public OptionalDouble mostAtomic(Element wanted, Map<Element, Double> foundAtomicFractions) {
        return atoms.keySet().stream()
            .filter(marker -> !marker.equals(wanted) && marker.atomicNumber() != HYDROGEN)
            .mapToDouble(marker -> atomicRatio(wanted, marker)
                * Math.max(0, foundAtomicFractions.getOrDefault(marker, 0.0)))
            .min();
    }

    private int count(Element element) {
        Integer count = atoms.getOrDefault(element, 0);
        if (count == 0) {
            throw new IllegalArgumentException(name + " holds no " + element + ".");
        }
        return count;
    }

    private SortedMap<Element, Double> fractions(boolean byMass, boolean visibleOnly) {
        SortedMap<Element, Double> parts = new TreeMap<>();
        atoms.forEach((element, count) -> {
            if (!visibleOnly || element.atomicNumber() != HYDROGEN) {
                parts.put(element, byMass ? count * element.atomicWeight() : (double) count);
            }
        });
        double sum = parts.values().stream().mapToDouble(Double::doubleValue).sum();
        parts.replaceAll((element, part) -> part / sum);
        return parts;
    }
}
