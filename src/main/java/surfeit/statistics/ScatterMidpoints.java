package surfeit.statistics;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Equally likely values of estimated over true standard deviation, {@code √(χ²(df)/df)} at the midpoints of 400 or of 20
 * equal shares of probability. Kept for up to 256 degrees of freedom (under 1 MB in all). Thread-safe.
 */
final class ScatterMidpoints {

    static final int POINTS = 400;
    /** Where each is joined with as many of another error. */
    static final int FEW = 20;
    private static final int KEPT = 256;
    private static final Map<Integer, double[]> BY_DF = new ConcurrentHashMap<>();
    private static final Map<Integer, double[]> FEW_BY_DF = new ConcurrentHashMap<>();

    private ScatterMidpoints() {
    }

    /** Not to be changed by the caller. */
    static double[] of(int df, int points) {
        Map<Integer, double[]> kept = points == POINTS ? BY_DF : FEW_BY_DF;
        return df > KEPT || points != POINTS && points != FEW ? computed(df, points)
            : kept.computeIfAbsent(df, own -> computed(own, points));
    }

    private static double[] computed(int df, int points) {
        double[] factors = new double[points];
        for (int i = 0; i < points; i++) {
            factors[i] = Math.sqrt(ChiSquare.quantile((i + 0.5) / points, df) / df);
        }
        return factors;
    }
}
