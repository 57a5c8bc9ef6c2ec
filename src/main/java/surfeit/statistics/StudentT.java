package surfeit.statistics;

/**
 * Probabilities of Student's t distribution for any real number of degrees of freedom above 0.
 *
 * <p>With {@code a = df/2}, {@code r² = t²/df}, {@code y = r²/(1+r²)} the two-sided p value is the regularised
 * incomplete beta function {@code I_{1-y}(a, 1/2)} (NIST Digital Library of Mathematical Functions, 8.17). Near the
 * centre its complement {@code I_y(1/2, a)} is summed as a series of positive terms; in the tails a continued
 * fraction of positive terms is used, or with many degrees of freedom an expansion about the normal tail. None of
 * these cancels: p keeps a relative accuracy of about 1e-13. Above 1e8 degrees of freedom the normal distribution
 * stands in (p differs by less than 1e-8). NaN in gives NaN out. Allocates nothing; thread-safe.
 */
public final class StudentT {

    /** More degrees of freedom than this count as infinitely many. */
    public static final double NORMAL_ABOVE = 1e8;

    private static final double SQRT_PI = Math.sqrt(Math.PI);
    private static final double UNIT_ROUNDING = Math.ulp(1.0) / 2;
    /** The asymptotic series of Γ(a+1/2)/Γ(a) is exact to rounding from here on. */
    private static final double GAMMA_SERIES_FROM = 12;
    /** The fraction needs at most 75 rounds where it is used; more means a fault in this class. */
    private static final int MOST_ROUNDS = 500;
    /** From here on, and up to this t² and a twentieth of df, the tail follows from the normal one to 1e-13. */
    private static final double MANY = 1000;
    private static final double NEAR_SQUARE = 256;
    /** Above this r the square could overflow and 1 is lost beside it anyway. */
    private static final double LARGE_RATIO = 1e10;

    private StudentT() {
    }

    /** The density at t. */
    public static double density(double t, double df) {
        requirePositive(df);
        if (df > NORMAL_ABOVE) {
            return NormalDistribution.density(t);
        }
        double r = Math.abs(t) / Math.sqrt(df);
        return gammaRatio(df / 2) / (SQRT_PI * Math.sqrt(df)) * Math.exp(-(df + 1) / 2 * logOfOnePlusSquare(r));
    }

    /** P(T > t). */
    public static double survival(double t, double df) {
        double half = 0.5 * twoSidedP(t, df);
        return t > 0 ? half : 1 - half;
    }

    /** P(|T| > |t|): the p value of a two-sided test. */
    public static double twoSidedP(double t, double df) {
        requirePositive(df);
        if (df > NORMAL_ABOVE) {
            return NormalDistribution.twoSidedP(t);
        }
        return isCentral(t, df) ? 1 - central(t, df) : tails(t, df);
    }

    /**
     * The t below which a share {@code probability} lies.
     *
     * @throws IllegalArgumentException unless 0 < probability < 1 and df > 0
     */
    public static double quantile(double probability, double df) {
        requirePositive(df);
        if (df > NORMAL_ABOVE) {
            return NormalDistribution.quantile(probability);
        }
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException("Probability is " + probability + ", must lie between 0 and 1.");
        }
        return probability < 0.5 ? -StudentTQuantile.upper(probability, df)
            : StudentTQuantile.upper(1 - probability, df);
    }

    /** P(|T| ≤ |t|), with relative accuracy near 0. */
    static double twoSidedCentral(double t, double df) {
        return isCentral(t, df) ? central(t, df) : 1 - tails(t, df);
    }

    /** Where the series needs few terms; both ways agree on either side. */
    private static boolean isCentral(double t, double df) {
        return t * t < 6 * df / (df + 6);
    }

    private static double central(double t, double df) {
        double a = df / 2;
        double r = Math.abs(t) / Math.sqrt(df);
        double y = r * r / (1 + r * r);
        double term = 1;
        double sum = 1;
        for (int n = 0; term > UNIT_ROUNDING * sum; n++) {
            term *= y * (a + 0.5 + n) / (1.5 + n);
            sum += term;
        }
        return 2 * sum * tTimesDensity(t, df);
    }

    private static double tails(double t, double df) {
        if (df >= MANY && t * t <= Math.min(NEAR_SQUARE, df / 20)) {
            return nearNormal(t, df);
        }
        double r = Math.abs(t) / Math.sqrt(df);
        double inverse = 1 / (r * r);
        return 2 / df * (1 + inverse) * tTimesDensity(t, df) / fraction(df / 2, inverse);
    }

    /**
     * The tail of the normal distribution at a t made smaller (Hill, Comm. ACM 13 (1970) 617, algorithm 395, from
     * memory): within 1e-13 of the fraction where it is used, in a tenth of the time.
     */
    private static double nearNormal(double t, double df) {
        double a = df - 0.5;
        double b = 48 * a * a;
        double y = a * Math.log1p(t * t / df);
        double last = (((-0.4 * y - 3.3) * y - 24) * y - 85.5) / (0.8 * y * y + 100 + b);
        return NormalDistribution.twoSidedP(((last + y + 3) / b + 1) * Math.sqrt(y));
    }

    /** |t| times the density, x^a √(1-x) / B(a, 1/2): unlike the density it is no smaller than about P(T > t). */
    static double tTimesDensity(double t, double df) {
        double r = Math.abs(t) / Math.sqrt(df);
        double ratio = r < LARGE_RATIO ? r / Math.sqrt(1 + r * r) : 1;
        return gammaRatio(df / 2) / SQRT_PI * ratio * Math.exp(-df / 2 * logOfOnePlusSquare(r));
    }

    /**
     * Gauss's continued fraction 1 + k₁w/(1 + k₂w/(1 + ...)) with kₙ = n/2 (a + (n-1)/2) / ((a+n-1)(a+n)): the
     * reciprocal of ₂F₁(1, 1/2; a+1; -w) (the same library, 15.7), by Steed's method. For many degrees of freedom kₙw
     * nears n/t² and it becomes Laplace's fraction of the normal tail.
     */
    private static double fraction(double a, double w) {
        double d = 1;
        double change = 1;
        double inverse = 1;
        for (int n = 1; n <= MOST_ROUNDS; n++) {
            d = 1 / (1 + 0.5 * n * (a + 0.5 * (n - 1)) * w / ((a + n - 1) * (a + n)) * d);
            change *= d - 1;
            inverse += change;
            if (!(Math.abs(change) > UNIT_ROUNDING * inverse)) {
                return 1 / inverse;
            }
        }
        throw new ArithmeticException("The continued fraction of t did not settle at a = " + a + ", w = " + w + ".");
    }

    /**
     * Γ(a+1/2)/Γ(a), without the cancellation of two large log-gammas.
     *
     * <p>ln of it = ½ ln a - 1/(8a) + 1/(192a³) - 1/(640a⁵) + 17/(14336a⁷) - 31/(18432a⁹) + 691/(180224a¹¹) - ...,
     * from the Stirling series of both; small a is first raised by Γ(a+½)/Γ(a) = a/(a+½) · Γ(a+1+½)/Γ(a+1).
     */
    static double gammaRatio(double a) {
        double above = 1;
        double below = 1;
        double b = a;
        for (; b < GAMMA_SERIES_FROM; b++) {
            above *= b;
            below *= b + 0.5;
        }
        double v = 1 / (b * b);
        double series = (((((691.0 / 180224 * v - 31.0 / 18432) * v + 17.0 / 14336) * v - 1.0 / 640) * v
            + 1.0 / 192) * v - 1.0 / 8) / b;
        return above / below * Math.sqrt(b) * Math.exp(series);
    }

    /** ln(1 + r²) for r ≥ 0, also where r² would overflow. */
    private static double logOfOnePlusSquare(double r) {
        return r < LARGE_RATIO ? Math.log1p(r * r) : 2 * Math.log(r);
    }

    private static void requirePositive(double df) {
        if (!(df > 0)) {
            throw new IllegalArgumentException("Degrees of freedom are " + df + ", must be above 0.");
        }
    }
}
