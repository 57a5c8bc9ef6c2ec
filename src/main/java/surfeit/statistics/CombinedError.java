package surfeit.statistics;

/**
 * Interval and p value of an estimate that carries a random error and an error shared by all its values.
 *
 * <p>s standard error of the random part, df its degrees of freedom, u the shared standard uncertainty, d the
 * estimate's distance from the value asked about:
 *
 * <pre>    ν = df (1 + u²/s²)²
 *    h = max( t(ν) √(s²+u²), t(df) s )
 *    p = max( 2 P(T_ν > |d|/√(s²+u²)), 2 P(T_df > |d|/s) )</pre>
 *
 * ν is Welch and Satterthwaite's figure with a known u. Alone it is too low where s is estimated from two or three
 * values (coverage of the 95 % interval down to 87 %), hence the larger of the two: the interval is never narrower
 * than the one without u, and its coverage in simulation is 94 to 98 %. With s = 0 the normal distribution and u
 * decide.
 *
 * <p>The distance may be infinite (then p is 0). All functions refuse s = u = 0: where nothing is uncertain,
 * no probability exists. Allocates nothing; thread-safe.
 */
public final class CombinedError {

    /** Between these the square of a number neither vanishes nor overflows. */
    private static final double SQUARED_FROM = 1e-150;
    private static final double SQUARED_TO = 1e150;

    private CombinedError() {
    }

    /** ν: how many degrees of freedom stand behind √(s²+u²). Infinite for s = 0. */
    public static double degreesOfFreedom(double s, double df, double u) {
        require(s, df, u);
        if (s == 0 || df > StudentT.NORMAL_ABOVE) {
            return Double.POSITIVE_INFINITY;
        }
        double ratio = u / s;
        double factor = 1 + ratio * ratio;
        return df * factor * factor;
    }

    /** h: the two-sided interval with this confidence (0.95, say) reaches from the estimate - h to the estimate + h. */
    public static double halfWidth(double s, double df, double u, double confidence) {
        double upper = (1 + confidence) / 2;
        double nu = degreesOfFreedom(s, df, u);
        double both = StudentT.quantile(upper, nu) * total(s, u);
        return randomPartMayDecide(s, df, u) ? Math.max(both, StudentT.quantile(upper, df) * s) : both;
    }

    /** p of "the distance is 0", two-sided. */
    public static double twoSidedP(double distance, double s, double df, double u) {
        double nu = degreesOfFreedom(s, df, u);
        if (Double.isNaN(distance)) {
            throw new IllegalArgumentException("Distance is not a number.");
        }
        double both = StudentT.twoSidedP(distance / total(s, u), nu);
        return randomPartMayDecide(s, df, u) ? Math.max(both, StudentT.twoSidedP(distance / s, df)) : both;
    }

    /** p of "the distance is 0 or below": small where the distance is surely above 0. */
    public static double oneSidedP(double distance, double s, double df, double u) {
        double half = twoSidedP(distance, s, df, u) / 2;
        return distance > 0 ? half : 1 - half;
    }

    /** {@link #halfWidth(double, double, double, double)} */
    public static double halfWidth(RandomPart random, double u, double confidence) {
        return halfWidth(random.standardError(), random.degreesOfFreedom(), u, confidence);
    }

    /** {@link #twoSidedP(double, double, double, double)} */
    public static double twoSidedP(double distance, RandomPart random, double u) {
        return twoSidedP(distance, random.standardError(), random.degreesOfFreedom(), u);
    }

    /** {@link #oneSidedP(double, double, double, double)} */
    public static double oneSidedP(double distance, RandomPart random, double u) {
        return oneSidedP(distance, random.standardError(), random.degreesOfFreedom(), u);
    }

    /** Without u both sides of the maximum agree, and with a known s the first is the larger. */
    private static boolean randomPartMayDecide(double s, double df, double u) {
        return s > 0 && u > 0 && df <= StudentT.NORMAL_ABOVE;
    }

    private static double total(double s, double u) {
        double total = Math.sqrt(s * s + u * u);
        return total > SQUARED_FROM && total < SQUARED_TO ? total : Math.hypot(s, u);
    }

    private static void require(double s, double df, double u) {
        if (!(s >= 0 && u >= 0 && s < Double.POSITIVE_INFINITY && u < Double.POSITIVE_INFINITY && df > 0)) {
            throw new IllegalArgumentException("Random error " + s + " and shared error " + u
                + " must be 0 or above and finite, degrees of freedom " + df + " above 0.");
        }
        if (s == 0 && u == 0) {
            throw new IllegalArgumentException("Random and shared error are both 0: no probability exists.");
        }
    }
}
