package surfeit.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import surfeit.segregation.answer.Estimate;

/**
 * Numbers as a chemist writes them: as many digits as the uncertainty carries, and a point as the decimal mark.
 *
 * <p>A value with a standard uncertainty is rounded to the place of the second significant digit of that uncertainty:
 * 10.05762 with u = 0.027 becomes 10.058 (JCGM 100:2008 section 7.2.6). A value with an interval is rounded likewise by
 * half the width of the interval, but every number keeps at least two significant digits of its own, so that the low
 * end of a wide interval does not vanish. Bounds are rounded away from the claim, so that they stay true. Infinite ends
 * are words. Thread-safe; the default locale has no influence.
 */
public final class Digits {
    private static final int SIGNIFICANT = 2;
    /** Places shown where no uncertainty is known: the hundredth of a percent that workstations print. Judgement. */
    private static final int PLACES_WITHOUT_UNCERTAINTY = 2;
    /** Most places ever shown; smaller numbers are written with a power of ten. Judgement. */
    private static final int PLACES_MAX = 6;
    /** Below this p values are not told apart: tails of a t distribution mean little so far out. Judgement. */
    private static final double SMALLEST_P = 0.001;

    /** Keeps the last bits of a computed number from turning a bound into the next one. */
    private static final double NOISE = 1e-9;

    private Digits() {
    }

    /** A value rounded to the place of the second significant digit of its standard uncertainty. */
    public static String rounded(double value, double uncertainty) {
        return fixed(value, places(uncertainty));
    }

    /** A fraction as percent with its standard uncertainty, {@code 78.10 +- 0.90}. */
    public static String percent(double fraction, double uncertainty, Signs signs) {
        double u = uncertainty * 100;
        return rounded(fraction * 100, u) + " " + signs.plusMinus() + " " + rounded(u, u);
    }

    /** An atomic fraction as percent with the ends of its interval, {@code 1.20 at% (0.85 to 1.55)}. */
    public static String atomicPercentInterval(double fraction, double low, double high) {
        return interval(new Estimate(fraction * 100, low * 100, high * 100), " at%");
    }

    /** A difference of fractions as percent with its sign, {@code +8.0}. */
    public static String signedPercent(double difference, double uncertainty) {
        String text = rounded(difference * 100, uncertainty * 100);
        return difference > 0 ? "+" + text : text;
    }

    /**
     * A number without an uncertainty: two places, or two significant digits where those are finer; no trailing zeros.
     */
    public static String plain(double value) {
        return trimmed(value, Math.max(PLACES_WITHOUT_UNCERTAINTY, places(value)));
    }

    /** As {@link #plain}, with its zeros, so that numbers of a column stand with their decimal marks below each other. */
    public static String inColumn(double value) {
        return number(value, Math.max(PLACES_WITHOUT_UNCERTAINTY, places(value)));
    }

    /** A nominal fraction or limit as percent, written as {@link #plain} does. */
    public static String nominalPercent(double fraction) {
        return plain(fraction * 100);
    }

    /** A setting or limit as stated: up to six places, no trailing zeros. */
    public static String setting(double value) {
        return trimmed(value, PLACES_MAX);
    }

    /** A value with its interval, {@code 1.31 (1.12 to 1.52)}; an end without a bound is said in words. */
    public static String interval(Estimate estimate) {
        return interval(estimate, "");
    }

    private static String interval(Estimate estimate, String unit) {
        double halfWidth = (estimate.high() - estimate.low()) / 2;
        int places = Double.isInfinite(halfWidth) ? 0 : places(halfWidth);
        return number(estimate.value(), places) + unit + " (" + ends(estimate, places) + ")";
    }

    /** A fraction as percent with the ends of its interval, {@code 23.9 % (21.0 to 27.0)}. */
    public static String percentInterval(Estimate fraction) {
        return interval(new Estimate(fraction.value() * 100, fraction.low() * 100, fraction.high() * 100), " %");
    }

    /** A share without an uncertainty as percent, with three significant digits: {@code 23.9 %}. */
    public static String share(double fraction) {
        return BigDecimal.valueOf(fraction * 100).round(new MathContext(SIGNIFICANT + 1)).toPlainString() + " %";
    }

    /** A number of which only the size matters: two significant digits. */
    public static String significant(double value) {
        return BigDecimal.valueOf(value).round(new MathContext(SIGNIFICANT)).toPlainString();
    }

    /** A fraction in percent as a bound from below, with one place, rounded down so that it stays true. */
    public static String lowerBoundPercent(double fraction) {
        return BigDecimal.valueOf(fraction * 100 * (1 + NOISE)).setScale(1, RoundingMode.FLOOR).toPlainString();
    }

    /** A length given in nm, in nm below a micrometre and in um from there on, with two significant digits. */
    public static String lengthOfNm(double nm) {
        return nm < 1000 ? significant(nm) + " nm" : significant(nm / 1000) + " \u00b5m";
    }

    /** A factor with its interval, {@code x1.31 (1.12 to 1.52)}. */
    public static String factor(Estimate estimate, Signs signs) {
        return signs.times() + interval(estimate);
    }

    /** A p value: {@code p < 0.001}, else two significant digits. */
    public static String pValue(double p) {
        if (p < SMALLEST_P) {
            return "p < " + setting(SMALLEST_P);
        }
        return p > 0.99 ? "p > 0.99" : "p = " + fixed(p, places(p));
    }

    /** A bound from above with three significant digits, rounded up so that it stays true. */
    public static String upperBound(double bound) {
        return BigDecimal.valueOf(bound * (1 - NOISE)).round(new MathContext(3, RoundingMode.CEILING))
            .stripTrailingZeros().toPlainString();
    }

    /** N of "at most 1 in N": the inverse of p with two significant digits, rounded down; 1000 at most. */
    public static String oneIn(double p) {
        if (p < SMALLEST_P) {
            return "1000";
        }
        return BigDecimal.valueOf(1 / p * (1 + NOISE)).round(new MathContext(SIGNIFICANT, RoundingMode.DOWN))
            .setScale(0, RoundingMode.DOWN).toPlainString();
    }

    private static String ends(Estimate estimate, int places) {
        boolean noLow = estimate.low() == Double.NEGATIVE_INFINITY;
        boolean noHigh = estimate.high() == Double.POSITIVE_INFINITY;
        if (noLow && noHigh) {
            return "no bounds";
        }
        if (noHigh) {
            return "at least " + end(estimate.low(), places) + ", no upper bound";
        }
        return noLow ? "no lower bound, at most " + end(estimate.high(), places)
            : end(estimate.low(), places) + " to " + end(estimate.high(), places);
    }

    /** An end that is not one is not printed as one: "no change" inside or outside the interval is the verdict. */
    private static String end(double value, int places) {
        int shown = places;
        while (shown < PLACES_MAX && value != 1
            && new BigDecimal(number(value, shown)).compareTo(BigDecimal.ONE) == 0) {
            shown++;
        }
        return number(value, shown);
    }

    private static String number(double value, int places) {
        return fixed(value, Math.max(places, value == 0 ? 0 : places(value)));
    }

    private static String trimmed(double value, int places) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(Math.min(places, PLACES_MAX), RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? fixed(value, 0) : rounded.stripTrailingZeros().toPlainString();
    }

    /** Places after the point that show two significant digits of a number. */
    private static int places(double uncertainty) {
        if (!Double.isFinite(uncertainty) || uncertainty == 0) {
            return PLACES_WITHOUT_UNCERTAINTY;
        }
        BigDecimal rounded = BigDecimal.valueOf(Math.abs(uncertainty))
            .round(new MathContext(SIGNIFICANT, RoundingMode.HALF_UP));
        int exponent = rounded.precision() - rounded.scale() - 1;
        return Math.min(Math.max(SIGNIFICANT - 1 - exponent, 0), PLACES_MAX);
    }

    private static String fixed(double value, int places) {
        if (!Double.isFinite(value)) {
            return Double.isNaN(value) ? "not known" : value > 0 ? "no upper bound" : "no lower bound";
        }
        BigDecimal exact = BigDecimal.valueOf(value);
        BigDecimal rounded = exact.setScale(places, RoundingMode.HALF_UP);
        if (rounded.signum() == 0 && exact.signum() != 0 && places >= PLACES_MAX) {
            return exact.round(new MathContext(SIGNIFICANT, RoundingMode.HALF_UP)).toString();
        }
        return rounded.toPlainString();
    }
}
