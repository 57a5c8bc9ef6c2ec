package surfeit.statistics;

/**
 * Probabilities of the standard normal distribution (mean 0, standard deviation 1).
 *
 * <p>Small tails keep their relative accuracy. NaN in gives NaN out. Allocates nothing; thread-safe.
 */
public final class NormalDistribution {

    private static final double SQRT_HALF = Math.sqrt(0.5);
    private static final double ONE_OVER_SQRT_TWO_PI = 1 / Math.sqrt(2 * Math.PI);
    /** Below this tail the survival is solved for, above it the central part, so that neither cancels. */
    private static final double TAIL = 0.25;

    private NormalDistribution() {
    }

    /** The density at z. */
    public static double density(double z) {
        return ONE_OVER_SQRT_TWO_PI * Math.exp(-0.5 * z * z);
    }

    /** P(Z ≤ z). */
    public static double cdf(double z) {
        return survival(-z);
    }

    /** P(Z > z). */
    public static double survival(double z) {
        return 0.5 * ErrorFunction.erfc(z * SQRT_HALF);
    }

    /** P(|Z| > |z|): the p value of a two-sided test. */
    public static double twoSidedP(double z) {
        return ErrorFunction.erfc(Math.abs(z) * SQRT_HALF);
    }

    /**
     * The z below which a share {@code probability} lies.
     *
     * @throws IllegalArgumentException unless 0 < probability < 1
     */
    public static double quantile(double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException("Probability is " + probability + ", must lie between 0 and 1.");
        }
        return probability < 0.5 ? -upperQuantile(probability) : upperQuantile(1 - probability);
    }

    /**
     * The z ≥ 0 above which a share {@code tail} lies, 0 < tail ≤ 0.5.
     *
     * <p>Two steps of third order (Halley) on the survival, from a start that is good to 4.5e-4.
     */
    static double upperQuantile(double tail) {
        double z = startOf(tail);
        for (int i = 0; i < 2; i++) {
            double missing = tail < TAIL ? survival(z) - tail : (0.5 - tail) - 0.5 * ErrorFunction.erf(z * SQRT_HALF);
            double step = missing / density(z);
            z += step / (1 - 0.5 * z * step);
        }
        return z;
    }

    /** Abramowitz and Stegun (1964) 26.2.23; its coefficients only set where the iteration starts. */
    private static double startOf(double tail) {
        double t = Math.sqrt(-2 * Math.log(tail));
        double p = (0.010328 * t + 0.802853) * t + 2.515517;
        double q = ((0.001308 * t + 0.189269) * t + 1.432788) * t + 1;
        return Math.max(t - p / q, 0);
    }
}
