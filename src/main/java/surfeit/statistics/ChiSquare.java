package surfeit.statistics;

import org.apache.commons.math3.special.Gamma;

/** Quantiles of the chi-square distribution, the scatter of an estimated variance. Thread-safe. */
public final class ChiSquare {

    /** A step this small in ln x ends the search: the next one would be its square. */
    private static final double LAST_STEP = 1e-7;
    private static final int MOST_STEPS = 200;

    private ChiSquare() {
    }

    /**
     * The x below which a share {@code probability} lies.
     *
     * <p>Newton's method on {@code ln P} over {@code ln x}, which rises ever more slowly: the steps climb to the root
     * from the left, wherever they start. Start: Wilson and Hilferty, Proc. Nat. Acad. Sci. 17 (1931) 684 (from
     * memory).
     *
     * @throws IllegalArgumentException unless 0 < probability < 1 and df > 0
     */
    public static double quantile(double probability, double df) {
        if (!(probability > 0 && probability < 1 && df > 0)) {
            throw new IllegalArgumentException("Probability is " + probability + " with " + df
                + " degrees of freedom; must lie between 0 and 1, the degrees of freedom above 0.");
        }
        double a = df / 2;
        double logGamma = Gamma.logGamma(a);
        double y = startOf(probability, df) / 2;
        for (int i = 0; i < MOST_STEPS; i++) {
            double p = Gamma.regularizedGammaP(a, y);
            double yTimesDensity = Math.exp(a * Math.log(y) - y - logGamma);
            double step = Math.log(probability / p) * p / yTimesDensity;
            y *= Math.exp(step);
            if (Math.abs(step) < LAST_STEP) {
                return 2 * y;
            }
        }
        throw new ArithmeticException("No chi-square found below which a share " + probability + " lies at " + df
            + " degrees of freedom.");
    }

    /** Where the cube approximation fails, the first term of the power series of P: {@code (x/2)^a / Γ(a+1)}. */
    private static double startOf(double probability, double df) {
        double v = 2 / (9 * df);
        double cube = 1 - v + NormalDistribution.quantile(probability) * Math.sqrt(v);
        double firstTerm = 2 * Math.exp((Math.log(probability) + Gamma.logGamma(df / 2 + 1)) / (df / 2));
        return cube > 0 ? Math.max(df * cube * cube * cube, firstTerm) : firstTerm;
    }
}
