package surfeit.statistics;

/**
 * How the background under a peak was found, and what that means for net counts: their standard uncertainty, the count
 * above which a peak is there, and the smallest true count that will be found.
 *
 * <p>N net counts, B background counts under the peak, both in counts; β is 2 for a paired background, 1 for a
 * well-known one:
 *
 * <pre>    σ = √(N + βB)      L_C = z √(βB)      L_D = z² + 2z √(βB)      z = 1.645</pre>
 *
 * L_C is passed by a blank, L_D missed, in 5 % of cases each. The normal approximation is poor for B below about 70
 * counts. Source: Currie, Anal. Chem. 40 (1968) 586, Table II (from memory).
 */
public enum Background {

    /** Read with the same uncertainty as the counts under the peak, such as two windows beside it. */
    PAIRED(2),
    /** Known far better than the counts under the peak, such as a fit over a wide range. */
    WELL_KNOWN(1);

    private static final double Z95 = NormalDistribution.quantile(0.95);

    private final double share;

    Background(double share) {
        this.share = share;
    }

    /** σ of the net counts; net counts below 0 count as 0 here. */
    public double sigmaOfNet(double netCounts, double backgroundCounts) {
        requireCounts(backgroundCounts);
        if (!Double.isFinite(netCounts)) {
            throw new IllegalArgumentException("Net counts are " + netCounts + ", must be a finite number.");
        }
        return Math.sqrt(Math.max(netCounts, 0) + share * backgroundCounts);
    }

    /** L_C: net counts above this show that the element is there. */
    public double decisionThreshold(double backgroundCounts) {
        requireCounts(backgroundCounts);
        return Z95 * Math.sqrt(share * backgroundCounts);
    }

    /** L_D: a true net count this large exceeds the decision threshold in 95 % of measurements. */
    public double detectionLimit(double backgroundCounts) {
        return Z95 * Z95 + 2 * decisionThreshold(backgroundCounts);
    }

    private static void requireCounts(double counts) {
        if (!(counts >= 0 && counts < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("Background counts are " + counts + ", must be 0 or above and finite.");
        }
    }
}
