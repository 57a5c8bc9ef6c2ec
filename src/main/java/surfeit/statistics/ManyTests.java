package surfeit.statistics;

import java.util.Comparator;
import java.util.stream.IntStream;

/** Adjusts the p values of a family of tests, so that testing many elements does not flag one by chance. */
public final class ManyTests {

    private static final int INSERTED_UP_TO = 48;

    private ManyTests() {
    }

    /**
     * Holm's step-down: the chance of any false flag in the family stays at or below alpha, whatever the tests'
     * dependence.
     *
     * <p>The j-th smallest of m becomes {@code max over i ≤ j of (m-i+1) p(i)}, at most 1; the order given is kept.
     * Source: Holm, Scand. J. Statist. 6 (1979) 65 (from memory).
     */
    public static double[] holm(double... pValues) {
        int[] order = ascending(pValues);
        double[] adjusted = new double[pValues.length];
        double largest = 0;
        for (int rank = 0; rank < order.length; rank++) {
            largest = Math.max(largest, (order.length - rank) * pValues[order[rank]]);
            adjusted[order[rank]] = Math.min(largest, 1);
        }
        return adjusted;
    }

    private static int[] ascending(double[] pValues) {
        for (double p : pValues) {
            if (!(p >= 0 && p <= 1)) {
                throw new IllegalArgumentException("A p value is " + p + ", must lie in 0 to 1.");
            }
        }
        return pValues.length <= INSERTED_UP_TO ? inserted(pValues) : IntStream.range(0, pValues.length).boxed()
            .sorted(Comparator.comparingDouble(i -> pValues[i])).mapToInt(Integer::intValue).toArray();
    }

    /** The same order without an object per value, for the short families most answers have. */
    private static int[] inserted(double[] pValues) {
        int[] order = new int[pValues.length];
        for (int i = 0; i < order.length; i++) {
            int at = i;
            for (; at > 0 && pValues[order[at - 1]] > pValues[i]; at--) {
                order[at] = order[at - 1];
            }
            order[at] = i;
        }
        return order;
    }
}
