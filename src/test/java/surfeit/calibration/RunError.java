package surfeit.calibration;

import java.util.List;
import surfeit.element.Element;

/**
 * The calibration error of one measuring run, the same for every spot of it:
 *
 * <pre>    reported_j = true_j exp(r0 x_j) + f_j y_j,     f_j = 0.001 (sum_l C_l A_l) / A_j</pre>
 *
 * x, y standard numbers per element; r0 the relative standard uncertainty of the accuracy class; f_j the additive share
 * of 0.1 mass % as an atomic fraction. Two runs, or a specimen and a reference piece within one, have x and y
 * correlated by rho.
 */
record RunError(double[] relative, double[] additive) {
    private static final double FLOOR_MASS_FRACTION = 0.001;

    static RunError draw(int elements, Scatter law, Dice dice) {
        return new RunError(Composition.draws(law, elements, dice), Composition.draws(law, elements, dice));
    }

    /** The error of another measurement whose parts correlate with these by {@code rho}. */
    RunError correlated(double rho, Scatter law, Dice dice) {
        RunError fresh = draw(relative.length, law, dice);
        return new RunError(mixed(relative, fresh.relative, rho), mixed(additive, fresh.additive, rho));
    }

    private static double[] mixed(double[] own, double[] fresh, double rho) {
        double[] result = new double[own.length];
        for (int j = 0; j < own.length; j++) {
            result[j] = rho * own[j] + Math.sqrt(1 - rho * rho) * fresh[j];
        }
        return result;
    }

    /** What the instrument makes of true fractions, not closed. */
    double[] applied(double[] truth, double r0, List<Element> elements) {
        double mass = 0;
        for (int j = 0; j < truth.length; j++) {
            mass += truth[j] * elements.get(j).atomicWeight();
        }
        double[] result = new double[truth.length];
        for (int j = 0; j < truth.length; j++) {
            double floor = r0 > 0 ? FLOOR_MASS_FRACTION * mass / elements.get(j).atomicWeight() : 0;
            result[j] = truth[j] * StrictMath.exp(r0 * relative[j]) + floor * additive[j];
        }
        return result;
    }
}
