package surfeit.calibration;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalPart;
import surfeit.element.Element;

/** An invented alloy: elements and atomic fractions that add up to one. */
record Composition(List<Element> elements, double[] fractions) {

    /** Atomic percent by symbol, {@code Ag 60.1 Cu 39.9}. */
    static Composition of(String text) {
        String[] words = text.split(" ");
        Element[] elements = new Element[words.length / 2];
        double[] fractions = new double[elements.length];
        for (int i = 0; i < elements.length; i++) {
            elements[i] = Element.of(words[2 * i]);
            fractions[i] = Double.parseDouble(words[2 * i + 1]) / 100;
        }
        return new Composition(List.of(elements), fractions);
    }

    /** An invented Ag-Cu brazing alloy of two to six elements, none below 5 at%. */
    static Composition braze(int elements) {
        return of(switch (elements) {
            case 2 -> "Ag 60 Cu 40";
            case 3 -> "Ag 45 Cu 31 Zn 24";
            case 4 -> "Ag 41 Cu 29 Zn 22 Sn 8";
            case 5 -> "Ag 38 Cu 27 Zn 21 Sn 8 Ni 6";
            case 6 -> "Ag 35 Cu 26 Zn 20 Sn 8 Ni 6 Mn 5";
            default -> throw new IllegalArgumentException("A brazing alloy has 2 to 6 elements, got " + elements + ".");
        });
    }

    int size() {
        return fractions.length;
    }

    /** The same alloy as a nominal without tolerance. */
    Nominal nominal() {
        Map<Element, NominalPart> parts = new LinkedHashMap<>();
        for (int i = 0; i < size(); i++) {
            parts.put(elements.get(i), NominalPart.Point.exact(fractions[i]));
        }
        return new Nominal(Basis.ATOMIC, parts);
    }

    /** The alloy with the log odds of one element moved, the others keeping their ratios. */
    Composition shifted(int element, double logOdds) {
        double odds = fractions[element] / (1 - fractions[element]) * StrictMath.exp(logOdds);
        double moved = odds / (1 + odds);
        double[] result = new double[size()];
        for (int i = 0; i < size(); i++) {
            result[i] = i == element ? moved : fractions[i] * (1 - moved) / (1 - fractions[element]);
        }
        return new Composition(elements, result);
    }

    /** Log odds of one element. */
    double logit(int element) {
        return StrictMath.log(fractions[element] / (1 - fractions[element]));
    }

    /**
     * One particle (or spot) of this composition: {@code C_j (1 + b_j z_j - sum C_l b_l z_l)}.
     *
     * <p>Adds up to one and has exactly this composition as its mean, so that the truth an interval should cover is
     * known; the relative scatter of element j is about {@code b_j}.
     */
    static double[] scattered(double[] mean, double[] relative, double[] z) {
        double common = 0;
        for (int j = 0; j < mean.length; j++) {
            common += mean[j] * relative[j] * z[j];
        }
        double[] result = new double[mean.length];
        for (int j = 0; j < mean.length; j++) {
            result[j] = mean[j] * (1 + relative[j] * z[j] - common);
        }
        return result;
    }

    /** The same relative scatter for every element. */
    double[] alike(double relative) {
        double[] result = new double[size()];
        Arrays.fill(result, relative);
        return result;
    }

    /**
     * One draw per element. Skewed ones point up and down in turn: alike, they would cancel in a binary, whose
     * fractions follow their difference.
     */
    static double[] draws(Scatter scatter, int count, Dice dice) {
        double[] z = new double[count];
        for (int j = 0; j < count; j++) {
            z[j] = scatter.isSymmetric() || j % 2 == 0 ? scatter.draw(dice) : -scatter.draw(dice);
        }
        return z;
    }
}
