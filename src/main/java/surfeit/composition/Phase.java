package surfeit.composition;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import surfeit.element.Element;

/**
 * A phase an alloy may be made of: its composition as one point, its density, where it is found.
 *
 * <p>Immutable, thread-safe.
 *
 * @param system             the alloy system it belongs to, element symbols joined by a dash: {@code Ag-Cu}
 * @param name               its usual name, {@code (Ag)} for the solid solution on silver
 * @param atomicFractions    its composition at the temperature given, adding up to one
 * @param densityGPerCm3     its density in g/cm³, if known; without it there are no volume fractions
 * @param role               its part in the system: terminal solid solution, partner in the eutectic
 * @param temperatureCelsius the temperature its composition holds at, in °C, if stated
 * @param source             where the figures are from
 * @param sourceRead         whether they were read there
 */
public record Phase(String system, String name, Map<Element, Double> atomicFractions, OptionalDouble densityGPerCm3,
                    String role, OptionalDouble temperatureCelsius, String source, SourceRead sourceRead) {
    /** The {@link #role} of a solid solution on one of the alloy's elements. */
    public static final String TERMINAL = "terminal";
    private static final double ROUNDING = 1e-6;
    /** Fractions of a phase this near are the same, closed once more: some thousand times what closing may change. Judgement. */
    private static final double LAST_BITS = 1e-12;

    public Phase {
        atomicFractions = Collections.unmodifiableMap(new LinkedHashMap<>(atomicFractions));
        if (name.isBlank() || source.isBlank()) {
            throw new IllegalArgumentException("A phase needs a name and a source, got name \"" + name
                + "\" and source \"" + source + "\".");
        }
        Set<Element> expected = elementsOf(system);
        double sum = 0;
        for (Map.Entry<Element, Double> entry : atomicFractions.entrySet()) {
            double fraction = entry.getValue();
            if (!(fraction >= 0 && fraction <= 1 + ROUNDING) || !expected.contains(entry.getKey())) {
                throw new IllegalArgumentException("Phase " + name + " holds fractions from 0 to 1 of the elements of "
                    + system + ", got " + fraction + " of " + entry.getKey() + ".");
            }
            sum += fraction;
        }
        if (!(Math.abs(sum - 1) <= ROUNDING)) {
            throw new IllegalArgumentException("The fractions of phase " + name + " add up to 1, got " + sum + ".");
        }
        densityGPerCm3.ifPresent(value -> requirePositive(name, value));
    }

    /** A phase whose composition is written like a nominal, in at% or wt%, as points only. */
    public static Phase of(String system, String name, Nominal composition, OptionalDouble densityGPerCm3, String role,
                           OptionalDouble temperatureCelsius, String source, SourceRead sourceRead) {
        NominalFractions fractions = composition.resolve();
        double[] values = fractions.middles();
        Map<Element, Double> byElement = new LinkedHashMap<>();
        for (int i = 0; i < values.length; i++) {
            if (!fractions.isPoint(i)) {
                throw new IllegalArgumentException("Phase " + name + " has one composition, got a range for "
                    + fractions.elements().get(i) + ".");
            }
            byElement.put(fractions.elements().get(i), values[i]);
        }
        return new Phase(system, name, byElement, densityGPerCm3, role, temperatureCelsius, source, sourceRead);
    }

    boolean saysTheSameAs(Phase other) {
        boolean composition = atomicFractions.keySet().equals(other.atomicFractions.keySet()) && atomicFractions.keySet().stream()
            .allMatch(element -> Math.abs(atomicFractions.get(element) - other.atomicFractions.get(element)) <= LAST_BITS);
        return composition && new Phase(system, name, other.atomicFractions, densityGPerCm3, role, temperatureCelsius, source,
            sourceRead).equals(other);
    }

    /** Whether it is a solid solution on one element: on cooling it may hold any less of the others, down to none. */
    public boolean isTerminal() {
        return role.equals(TERMINAL);
    }

    /** The elements of its system. */
    public Set<Element> systemElements() {
        return elementsOf(system);
    }

    /** Its atomic fractions in the order of a list of elements, closed over them; empty where it holds none of them. */
    public Optional<double[]> over(List<Element> elements) {
        double[] fractions = elements.stream()
            .mapToDouble(element -> atomicFractions.getOrDefault(element, 0.0)).toArray();
        return Arrays.stream(fractions).sum() > 0 ? Optional.of(Closure.close(fractions)) : Optional.empty();
    }

    /** Mean atomic weight in g/mol: mass of a mole of its atoms. */
    public double meanAtomicWeight() {
        double sum = 0;
        for (Map.Entry<Element, Double> part : atomicFractions.entrySet()) {
            sum += part.getValue() * part.getKey().atomicWeight();
        }
        return sum;
    }

    private static Set<Element> elementsOf(String system) {
        return Arrays.stream(system.split("-", -1)).map(Element::of).collect(Collectors.toCollection(TreeSet::new));
    }

    private static void requirePositive(String name, double density) {
        if (!(density > 0 && Double.isFinite(density))) {
            throw new IllegalArgumentException(
                "The density of phase " + name + " (g/cm3) is a finite number above 0, got " + density + ".");
        }
    }
}
