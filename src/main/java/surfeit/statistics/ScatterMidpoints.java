package surfeit.statistics;

import java.util.concurrent.atomic.AtomicReferenceArray;

/**
 * Equally likely values of estimated over true standard deviation, {@code √(χ²(df)/df)} at the midpoints of 400 equal
 * shares of probability. Kept for up to 256 degrees of freedom (under 1 MB in all). Thread-safe.
 */
final class ScatterMidpoints {

    private static final int POINTS = 400;
    private static final int KEPT = 256;
    private static final AtomicReferenceArray<double[]> BY_DF = new AtomicReferenceArray<>(KEPT + 1);

    private ScatterMidpoints() {
    }

    /** Not to be changed by the caller. */
    static double[] of(int df) {
        if (df > KEPT) {
            return computed(df);
        }
        double[] known = BY_DF.get(df);
        if (known == null) {
            known = computed(df);
            BY_DF.set(df, known);
        }
        return known;
    }

    private static double[] computed(int df) {
        double[] factors = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            factors[i] = Math.sqrt(ChiSquare.quantile((i + 0.5) / POINTS, df) / df);
        }
        return factors;
    }
}
