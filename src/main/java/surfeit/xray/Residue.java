package surfeit.xray;

import java.util.Collections;
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

    /** The residue as a film's material. */
    public Material material() {
        return Material.of(massFractions(), densityGramPerCm3);
    }

    /** Mass fractions of all its elements. */
    public SortedMap<Element, Double> massFractions() {
        SortedMap<Element, Double> parts = new TreeMap<>();
        atoms.forEach((element, count) -> parts.put(element, count * element.atomicWeight()));
        double sum = parts.values().stream().mapToDouble(Double::doubleValue).sum();
        parts.replaceAll((element, part) -> part / sum);
        return parts;
    }
}
