package surfeit.statistics;

/**
 * The complementary error function, {@code erfc(x) = 2/√π ∫ₓ^∞ exp(-t²) dt}, accurate to a few units in the last
 * place also where it is tiny. Allocates nothing.
 *
 * <p>Up to 4 by series about nodes, whose values come from three ratios of polynomials, for x up to 0.46875, up to 4, and
 * above. Source of their form and coefficients: W. J. Cody, "Rational Chebyshev approximations for the error function",
 * Math. Comp. 23 (1969) 631-637, as in his SPECFUN library; checked in the tests against values of other libraries.
 */
final class ErrorFunction {

    private static final double SMALL = 0.46875;
    private static final double LARGE = 4;
    /** Above this erfc is below the smallest double. */
    private static final double VANISHES = 27.3;
    /** exp(-(i/16)²) by i. */
    private static final double[] EXP_OF_MINUS_SQUARE = new double[(int) (VANISHES * 16) + 1];
    private static final double ONE_OVER_SQRT_PI = 1 / Math.sqrt(Math.PI);
    private static final double NODES_PER_ONE = 32;
    /** The next one adds less than 1e-17 of the value. */
    private static final int TERMS = 11;
    private static final double[] SERIES;

    static {
        for (int i = 0; i < EXP_OF_MINUS_SQUARE.length; i++) {
            EXP_OF_MINUS_SQUARE[i] = Math.exp(-(i / 16.0) * (i / 16.0));
        }
        SERIES = series();
    }

    private ErrorFunction() {
    }

    /** erf(x) = 1 - erfc(x), with full relative accuracy near 0. */
    static double erf(double x) {
        return Math.abs(x) <= SMALL ? x * centre(x * x) : Math.signum(x) * (1 - upper(Math.abs(x)));
    }

    static double erfc(double x) {
        double size = Math.abs(x);
        double erfc = size < LARGE ? nearNode(size) : upper(size);
        return x < 0 ? 2 - erfc : erfc;
    }

    /**
     * Taylor's series about the nearest of the nodes 1/32 apart, for 0 to 4: the same few steps for every x, without
     * exponential function and division.
     */
    private static double nearNode(double x) {
        int node = (int) (x * NODES_PER_ONE + 0.5);
        double h = x - node / NODES_PER_ONE;
        int at = node * TERMS;
        double sum = SERIES[at + TERMS - 1];
        for (int k = TERMS - 2; k >= 0; k--) {
            sum = sum * h + SERIES[at + k];
        }
        return sum;
    }

    /**
     * Coefficients a_k of the series of all nodes x: {@code a_0 = erfc x, a_1 = -2/√π exp(-x²)}, and from
     * {@code y'' = -2x y'} (NIST Digital Library of Mathematical Functions, 7.10) {@code a_{k+1} =
     * -2 (k x a_k + (k-1) a_{k-1}) / (k (k+1))}.
     */
    private static double[] series() {
        double[] series = new double[((int) (LARGE * NODES_PER_ONE) + 1) * TERMS];
        for (int at = 0; at < series.length; at += TERMS) {
            double x = at / TERMS / NODES_PER_ONE;
            series[at] = x <= SMALL ? 1 - x * centre(x * x) : upper(x);
            series[at + 1] = -2 * ONE_OVER_SQRT_PI * expOfMinusSquare(x);
            for (int k = 1; k < TERMS - 1; k++) {
                series[at + k + 1] = -2 * (k * x * series[at + k] + (k - 1) * series[at + k - 1]) / (k * (k + 1));
            }
        }
        return series;
    }

    private static double upper(double x) {
        if (x >= VANISHES) {
            return 0;
        }
        return expOfMinusSquare(x) * (x <= LARGE ? middle(x) : tail(x));
    }

    /** exp(-x²) without the rounding error of x²: the square of x cut to sixteenths is exact. */
    private static double expOfMinusSquare(double x) {
        int sixteenths = (int) (x * 16);
        double cut = sixteenths / 16.0;
        return EXP_OF_MINUS_SQUARE[sixteenths] * Math.exp(-(x - cut) * (x + cut));
    }

    private static double centre(double z) {
        double p = (((1.85777706184603153e-1 * z + 3.16112374387056560e0) * z + 1.13864154151050156e2) * z
            + 3.77485237685302021e2) * z + 3.20937758913846947e3;
        double q = (((z + 2.36012909523441209e1) * z + 2.44024637934444173e2) * z
            + 1.28261652607737228e3) * z + 2.84423683343917062e3;
        return p / q;
    }

    private static double middle(double x) {
        double p = (((((((2.15311535474403846e-8 * x + 5.64188496988670089e-1) * x + 8.88314979438837594e0) * x
            + 6.61191906371416295e1) * x + 2.98635138197400131e2) * x + 8.81952221241769090e2) * x
            + 1.71204761263407058e3) * x + 2.05107837782607147e3) * x + 1.23033935479799725e3;
        double q = (((((((x + 1.57449261107098347e1) * x + 1.17693950891312499e2) * x
            + 5.37181101862009858e2) * x + 1.62138957456669019e3) * x + 3.29079923573345963e3) * x
            + 4.36261909014324716e3) * x + 3.43936767414372164e3) * x + 1.23033935480374942e3;
        return p / q;
    }

    private static double tail(double x) {
        double z = 1 / (x * x);
        double p = ((((1.63153871373020978e-2 * z + 3.05326634961232344e-1) * z + 3.60344899949804439e-1) * z
            + 1.25781726111229246e-1) * z + 1.60837851487422766e-2) * z + 6.58749161529837803e-4;
        double q = ((((z + 2.56852019228982242e0) * z + 1.87295284992346725e0) * z
            + 5.27905102951428412e-1) * z + 6.05183413124413191e-2) * z + 2.33520497626869185e-3;
        return (ONE_OVER_SQRT_PI - z * p / q) / x;
    }
}
