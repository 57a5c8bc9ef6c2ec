package surfeit.composition;

import java.util.Arrays;
import java.util.List;
import surfeit.element.Element;

/**
 * Closes a set of reported parts to one, in atomic or mass fractions.
 *
 * <pre>
 *     C_i = (v_i / a_i) / sum_j (v_j / a_j)
 * </pre>
 * v reported parts in any common unit; a_j is the atomic weight when mass becomes atomic, its inverse when atomic becomes
 * mass, and one when the basis stays. The result depends on which elements are in the set. Negative parts are
 * measurements and stay.
 */
public final class Closure {
    private Closure() {
    }

    /** Divisors that turn parts of one basis into another: atomic weights, their inverses, or ones. */
    public static double[] divisors(List<Element> elements, Basis from, Basis to) {
        double[] divisors = new double[elements.size()];
        for (int i = 0; i < divisors.length; i++) {
            double weight = elements.get(i).atomicWeight();
            divisors[i] = from == to ? 1 : from == Basis.MASS ? weight : 1 / weight;
        }
        return divisors;
    }

    /**
     * Parts closed to one: {@code (v_i / a_i) / sum (v_j / a_j)}.
     *
     * @throws CompositionException unless the sum is a finite number above 0
     */
    public static double[] close(double[] parts, double[] divisors) {
        double[] closed = new double[parts.length];
        double sum = sum(parts, divisors);
        for (int i = 0; i < closed.length; i++) {
            closed[i] = parts[i] / divisors[i] / sum;
        }
        return closed;
    }

    /** Parts of one basis closed to one without changing it. */
    public static double[] close(double[] parts) {
        double[] ones = new double[parts.length];
        Arrays.fill(ones, 1);
        return close(parts, ones);
    }

    /** Parts of one basis closed to one in another. */
    public static double[] convert(double[] parts, List<Element> elements, Basis from, Basis to) {
        return close(parts, divisors(elements, from, to));
    }

    private static double sum(double[] parts, double[] divisors) {
        if (parts.length != divisors.length) {
            throw new IllegalArgumentException(
                "Expected one divisor a part, got " + divisors.length + " for " + parts.length + " parts.");
        }
        double sum = 0;
        for (int i = 0; i < parts.length; i++) {
            sum += parts[i] / divisors[i];
        }
        if (!(sum > 0) || Double.isInfinite(sum)) {
            throw new CompositionException("The parts to close add up to " + sum + "; a sum above 0 is needed.");
        }
        return sum;
    }
}
