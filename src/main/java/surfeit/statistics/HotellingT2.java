package surfeit.statistics;

import java.util.Optional;

/**
 * Whether the mean of several quantities at once differs from what is expected: one test for all of them.
 *
 * <pre>    T² = k d' S⁻¹ d      F = T² (k-q)/(q (k-1)) with q and k-q degrees of freedom</pre>
 *
 * k observations of q quantities, d mean minus expected, S their covariance. The quantities must not be bound to a
 * constant sum (closed fractions have no inverse covariance: turn them into log-ratios first). Takes random error only.
 * Immutable. Source: Hotelling, Ann. Math. Statist. 2 (1931) 360 (from memory).
 */
public record HotellingT2(double t2, int quantities, int observations) {

    /** A pivot this small beside its variance means that one quantity follows from the others. */
    private static final double SINGULAR = 1e-12;

    public HotellingT2 {
        if (!(t2 >= 0) || quantities < 1 || observations <= quantities) {
            throw new IllegalArgumentException("T2 is " + t2 + " for " + quantities + " quantities and " + observations
                + " observations; must be 0 or above, with more observations than quantities.");
        }
    }

    /**
     * The test of rows (one observation each) against the expected mean; empty where there are no more observations
     * than quantities or where the quantities depend on each other.
     */
    public static Optional<HotellingT2> of(double[][] observations, double[] expected) {
        int q = expected.length;
        for (double[] row : observations) {
            if (row.length != q) {
                throw new IllegalArgumentException("Expected " + q + " quantities in every row, found "
                    + row.length + ".");
            }
        }
        if (observations.length <= q) {
            return Optional.empty();
        }
        double[] mean = meanOf(observations, q);
        double[][] lower = covarianceOf(observations, mean);
        if (!factorise(lower)) {
            return Optional.empty();
        }
        double squared = 0;
        double[] solved = new double[q];
        for (int i = 0; i < q; i++) {
            double rest = mean[i] - expected[i];
            for (int j = 0; j < i; j++) {
                rest -= lower[i][j] * solved[j];
            }
            solved[i] = rest / lower[i][i];
            squared += solved[i] * solved[i];
        }
        return Optional.of(new HotellingT2(observations.length * squared, q, observations.length));
    }

    public double f() {
        return t2 * (observations - quantities) / (quantities * (observations - 1.0));
    }

    /** p of "all means are as expected". */
    public double pValue() {
        return FDistribution.survival(f(), quantities, observations - quantities);
    }

    private static double[] meanOf(double[][] rows, int q) {
        double[] mean = new double[q];
        for (int i = 0; i < q; i++) {
            Moments moments = new Moments();
            for (double[] row : rows) {
                moments.add(row[i]);
            }
            mean[i] = moments.mean();
        }
        return mean;
    }

    /** The lower triangle only: so it cannot be asymmetric in the last bit. */
    private static double[][] covarianceOf(double[][] rows, double[] mean) {
        double[][] covariance = new double[mean.length][mean.length];
        for (int i = 0; i < mean.length; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = 0;
                for (double[] row : rows) {
                    sum += (row[i] - mean[i]) * (row[j] - mean[j]);
                }
                covariance[i][j] = sum / (rows.length - 1);
            }
        }
        return covariance;
    }

    /** Turns a lower triangle into its Cholesky factor; false where the matrix has no inverse. */
    private static boolean factorise(double[][] lower) {
        for (int i = 0; i < lower.length; i++) {
            double variance = lower[i][i];
            for (int j = 0; j <= i; j++) {
                double sum = lower[i][j];
                for (int m = 0; m < j; m++) {
                    sum -= lower[i][m] * lower[j][m];
                }
                if (i == j && !(sum > SINGULAR * variance)) {
                    return false;
                }
                lower[i][j] = i == j ? Math.sqrt(sum) : sum / lower[j][j];
            }
        }
        return true;
    }
}
