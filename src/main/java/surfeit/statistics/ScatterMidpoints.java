package surfeit.statistics;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Equally likely values of estimated over true standard deviation, {@code √(χ²(df)/df)} at the midpoints of 400 equal
 * shares of probability. Kept for up to 256 degrees of freedom (under 1 MB in all). Thread-safe.
 */
final class ScatterMidpoints {

    private static final int POINTS = 400;
    private static final int KEPT = 256;
    private static final Map<Integer, double[]> BY_DF = new ConcurrentHashMap<>();

    private ScatterMidpoints() {
    }

    /** Not to be changed by the caller. */
    static double[] of(int df) {
        return df > KEPT ? computed(df) : BY_DF.computeIfAbsent(df, ScatterMidpoints::computed);
    }

    private static double[] computed(int df) {
        double[] factors = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            factors[i] = Math.sqrt(ChiSquare.quantile((i + 0.5) / POINTS, df) / df);
        }
        return factors;
    }
}
