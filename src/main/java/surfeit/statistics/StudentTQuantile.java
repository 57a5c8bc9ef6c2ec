package surfeit.statistics;

import java.util.concurrent.atomic.AtomicLongArray;

/**
 * Solves Student's t survival for t. Allocates nothing; thread-safe.
 *
 * <p>In the tail Newton's method runs on {@code ln S} over {@code ln t}: that curve falls ever more steeply and ends
 * as a straight line, so from any start the steps come down to the root from the right. Near the centre it runs on
 * {@code P(0 < T < t)}, which rises ever more slowly, so the steps climb to the root from the left. Neither needs a
 * bracket. The ends of 95 % and 90 % intervals at few whole degrees of freedom are asked for all the time and kept once
 * solved.
 */
final class StudentTQuantile {

    /** Below this tail the survival is solved for, above it the central part. */
    private static final double TAIL = 0.25;
    /** A step this small (relative to t) ends the search: the next one would be its square. */
    private static final double LAST_STEP = 1e-8;
    /** Never needed; a search this long means a fault in this class. */
    private static final int MOST_STEPS = 200;

    /** Upper tails of the two-sided 95 % and 90 % intervals, as {@link StudentT#quantile} works them out. */
    private static final double[] KEPT_TAILS = {1 - 0.975, 1 - 0.95};
    private static final int KEPT_BELOW = 256;
    /** Tail by degrees of freedom; 0 until solved. Whoever solves writes the same bits, so no thread has to wait. */
    private static final AtomicLongArray[] KEPT = {new AtomicLongArray(KEPT_BELOW), new AtomicLongArray(KEPT_BELOW)};

    private StudentTQuantile() {
    }

    /** The t ≥ 0 above which a share {@code tail} lies, 0 < tail ≤ 0.5; infinite where no double is large enough. */
    static double upper(double tail, double df) {
        if (df < KEPT_BELOW && df == (int) df) {
            for (int i = 0; i < KEPT_TAILS.length; i++) {
                if (tail == KEPT_TAILS[i]) {
                    return kept(KEPT[i], tail, (int) df);
                }
            }
        }
        return solved(tail, df);
    }

    private static double kept(AtomicLongArray table, double tail, int df) {
        long bits = table.getPlain(df);
        if (bits == 0) {
            bits = Double.doubleToRawLongBits(solved(tail, df));
            table.setOpaque(df, bits);
        }
        return Double.longBitsToDouble(bits);
    }

    private static double solved(double tail, double df) {
        return tail < TAIL ? fromTail(tail, df) : fromCentre(0.5 - tail, df);
    }

    private static double fromTail(double tail, double df) {
        double t = startOf(tail, df);
        for (int i = 0; i < MOST_STEPS; i++) {
            double survival = StudentT.survival(t, df);
            double step = Math.log(survival / tail) * survival / StudentT.tTimesDensity(t, df);
            t *= Math.exp(step);
            if (Math.abs(step) < LAST_STEP || t == Double.POSITIVE_INFINITY) {
                return t;
            }
        }
        throw notFound(tail, df);
    }

    private static double fromCentre(double share, double df) {
        if (share == 0) {
            return 0;
        }
        double t = share / StudentT.density(0, df);
        for (int i = 0; i < MOST_STEPS; i++) {
            double step = (share - 0.5 * StudentT.twoSidedCentral(t, df)) / StudentT.tTimesDensity(t, df);
            t += t * step;
            if (Math.abs(step) < LAST_STEP) {
                return t;
            }
        }
        throw notFound(0.5 - share, df);
    }

    private static ArithmeticException notFound(double tail, double df) {
        return new ArithmeticException("No t found above which a share " + tail + " lies at " + df
            + " degrees of freedom.");
    }

    /**
     * The smaller of two: Wallace's map from z to t turned round, {@code ln(1 + t²/df) ≈ ((8df+3)/(8df+1) z)²/df}
     * (D. L. Wallace, Ann. Math. Statist. 30 (1959) 1124, from memory; it only sets where the search starts), and the
     * t of the power law {@code Γ(a+1/2)/(Γ(a)√π df) (t/√df)^-df} that bounds the survival from above.
     */
    private static double startOf(double tail, double df) {
        double z = NormalDistribution.upperQuantile(tail) * (8 * df + 3) / (8 * df + 1);
        double wallace = Math.sqrt(Math.expm1(Math.min(z * z / df, 600)));
        double powerLaw = Math.pow(StudentT.gammaRatio(df / 2) / (Math.sqrt(Math.PI) * df * tail), 1 / df);
        return Math.sqrt(df) * Math.min(wallace, powerLaw);
    }
}
