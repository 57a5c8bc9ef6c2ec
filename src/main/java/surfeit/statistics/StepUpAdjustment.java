package surfeit.statistics;

import java.util.Arrays;

/**
 * The adjustment of Benjamini and Hochberg as a function of p, for families too long to be held in their order: what
 * {@link ManyTests#benjaminiHochberg} gives each p of the family, given back for any of them, in any order. Immutable.
 *
 * <p>The p at rank j of m is worth {@code m p/j}; one is adjusted to the least worth at its rank or above. Only the
 * ranks where that least worth changes are kept.
 */
public final class StepUpAdjustment {
    /** The p values at which a lower worth begins, ascending, and that worth. */
    private final double[] ends;
    private final double[] worths;

    private StepUpAdjustment(double[] ends, double[] worths) {
        this.ends = ends;
        this.worths = worths;
    }

    /** @param pValues the whole family; it is sorted in place */
    public static StepUpAdjustment of(double[] pValues) {
        for (double p : pValues) {
            if (!(p >= 0 && p <= 1)) {
                throw new IllegalArgumentException("A p value is " + p + ", must lie in 0 to 1.");
            }
        }
        Arrays.sort(pValues);
        int count = steps(pValues, new double[0], new double[0]);
        double[] ends = new double[count];
        double[] worths = new double[count];
        steps(pValues, ends, worths);
        return new StepUpAdjustment(ends, worths);
    }

    /** Goes down the ranks and counts the steps; fills them in from the end where there is room for them. */
    private static int steps(double[] sorted, double[] ends, double[] worths) {
        int count = 0;
        double least = 1;
        for (int rank = sorted.length; rank >= 1; rank--) {
            double worth = sorted[rank - 1] * sorted.length / rank;
            if (worth < least) {
                least = worth;
                count++;
                if (ends.length > 0) {
                    ends[ends.length - count] = sorted[rank - 1];
                    worths[ends.length - count] = worth;
                }
            }
        }
        return count;
    }

    /** The adjusted p of a test whose p is one of the family. */
    public double of(double p) {
        int at = Arrays.binarySearch(ends, p);
        int first = at >= 0 ? at : -at - 1;
        while (first > 0 && ends[first - 1] >= p) {
            first--;
        }
        return first < ends.length ? worths[first] : 1;
    }

    /** How many steps it has. */
    public int size() {
        return ends.length;
    }
}
