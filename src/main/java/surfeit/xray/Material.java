package surfeit.xray;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import surfeit.composition.Basis;
import surfeit.composition.Closure;
import surfeit.element.Element;

/**
 * What the beam meets: a homogeneous solid by mass fractions (adding up to 1), and its density in g/cm³.
 *
 * <p>The density is given, or by volumes: 1/rho = sum(w/rho_i) over pure-element densities, which for alloys is
 * usually within a few percent. Elements that are gases when pure have no useful density of their own in a solid:
 * up to 1 wt% of them in all is left out of the volume (density up to about 5 % too high); above that, and for
 * elements without a tabulated density, a given density is demanded. All mass depths are free of the density; only
 * nanometres depend on it. Immutable, thread-safe.
 */
public record Material(SortedMap<Element, Double> massFractions, double densityGramPerCm3, boolean densityGiven) {
    /** Up to this mass fraction of gas-forming elements the rule of mixtures is used (judgement). */
    public static final double MOST_GAS_FORMERS = 0.01;
    private static final double SUM_TOLERANCE = 1e-6;
    private static final double CM_PER_NM = 1e-7;

    public Material {
        massFractions = Collections.unmodifiableSortedMap(new TreeMap<>(massFractions));
        massFractions.forEach((element, fraction) -> {
            if (!(fraction >= 0 && fraction <= 1)) {
                throw new IllegalArgumentException("Mass fraction of " + element + " is " + fraction
                    + ", must lie in 0 to 1.");
            }
        });
        double sum = massFractions.values().stream().mapToDouble(Double::doubleValue).sum();
        if (!(Math.abs(sum - 1) <= SUM_TOLERANCE)) {
            throw new IllegalArgumentException("Mass fractions must add up to 1, got " + sum + ".");
        }
        if (!(densityGramPerCm3 > 0 && densityGramPerCm3 <= 30)) {
            throw new IllegalArgumentException("Density is " + densityGramPerCm3
                + " g/cm3, must lie above 0 and up to 30.");
        }
    }

    /** A material of known density. */
    public static Material of(Map<Element, Double> massFractions, double densityGramPerCm3) {
        return new Material(new TreeMap<>(massFractions), densityGramPerCm3, true);
    }

    /** A material whose density follows from its elements' volumes. @throws IllegalArgumentException where it cannot */
    public static Material byVolumes(Map<Element, Double> massFractions) {
        double gases = 0;
        double volume = 0;
        for (Map.Entry<Element, Double> part : massFractions.entrySet()) {
            Element element = part.getKey();
            if (part.getValue() == 0) {
                continue;
            }
            if (element.gasAtRoomTemperature()) {
                gases += part.getValue();
            } else {
                volume += part.getValue() / element.density().orElseThrow(() -> new IllegalArgumentException(
                    "No density is tabulated for " + element + ": give the density of the material in g/cm3."));
            }
        }
        if (gases > MOST_GAS_FORMERS) {
            throw new IllegalArgumentException("Elements that are gases when pure make up a mass fraction of " + gases
                + "; above " + MOST_GAS_FORMERS + " the density of the material must be given in g/cm3.");
        }
        return new Material(new TreeMap<>(massFractions), 1 / volume, false);
    }

    /** The same; empty where the density cannot be worked out. */
    public static Optional<Material> byVolumesIfKnown(Map<Element, Double> massFractions) {
        double gases = 0;
        for (Map.Entry<Element, Double> part : massFractions.entrySet()) {
            boolean gas = part.getKey().gasAtRoomTemperature();
            gases += gas ? part.getValue() : 0;
            if (part.getValue() > 0 && !gas && part.getKey().density().isEmpty()) {
                return Optional.empty();
            }
        }
        return gases > MOST_GAS_FORMERS ? Optional.empty() : Optional.of(byVolumes(massFractions));
    }

    /** Mass fractions by element of atomic fractions in the order of a list; negative fractions count as zero. */
    public static Map<Element, Double> massFractions(List<Element> elements, double[] atomicFractions) {
        double[] parts = Arrays.stream(atomicFractions).map(part -> Math.max(part, 0)).toArray();
        double[] mass = Closure.convert(parts, elements, Basis.ATOMIC, Basis.MASS);
        Map<Element, Double> fractions = new TreeMap<>();
        for (int i = 0; i < mass.length; i++) {
            fractions.put(elements.get(i), mass[i]);
        }
        return fractions;
    }

    /** A pure solid element at its tabulated density. */
    public static Material pure(Element element) {
        return byVolumes(Map.of(element, 1.0));
    }

    /** Mass fraction of an element; 0 where it is not part of the material. */
    public double massFraction(Element element) {
        return massFractions.getOrDefault(element, 0.0);
    }

    /** Mass depth in g/cm² of a depth in nm. */
    public double massDepth(double depthNm) {
        return depthNm * CM_PER_NM * densityGramPerCm3;
    }

    /** Depth in nm of a mass depth in g/cm². */
    public double depthNm(double massDepth) {
        return massDepth / (CM_PER_NM * densityGramPerCm3);
    }

    /** Mean atomic number as the backscatter and depth models weigh it: (sum w sqrt Z)². */
    public double meanAtomicNumber() {
        double root = 0;
        for (Map.Entry<Element, Double> part : massFractions.entrySet()) {
            root += part.getValue() * Math.sqrt(part.getKey().atomicNumber());
        }
        return root * root;
    }
}
