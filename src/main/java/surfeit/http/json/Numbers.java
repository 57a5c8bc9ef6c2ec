package surfeit.http.json;

import com.fasterxml.jackson.core.io.NumberOutput;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.stream.Stream;
import surfeit.composition.Percent;
import surfeit.spot.ReportedValue;

/** Numbers on their way out. */
public final class Numbers {
    private static final double NINE_DECIMALS = 1e9;
    private static final int LAST_BITS = 2;
    /** A fraction of at most eleven decimals, which is a percentage of at most nine, times this is a whole number. */
    private static final double ELEVEN_DECIMALS = 1e11;
    /** Whole numbers below this are doubles. */
    private static final double WHOLE_MOST = 1L << 53;
    /** So short a text has at most nine decimals. */
    private static final int SHORT_TEXT = 10;

    private Numbers() {
    }

    /**
     * A fraction as percent: 0.601 gives 60.1.
     *
     * <p>A fraction times 100 may miss the decimal it came from by the last bit (0.07 gives 7.000000000000001). A
     * result within that reach of a number with at most nine decimals is that number: what was put comes back as it
     * was.
     */
    public static double inPercent(double fraction) {
        double percent = fraction * 100;
        double decimal = Math.rint(percent * NINE_DECIMALS) / NINE_DECIMALS;
        return Math.abs(decimal - percent) <= LAST_BITS * Math.ulp(percent) ? decimal : percent;
    }

    /**
     * A fraction that somebody stated as percent, as a percent that becomes this fraction again when it is put back.
     *
     * <p>Several doubles of percent may become one fraction; then it is the one of fewest digits, at most the last bit off
     * what was put.
     */
    public static double stated(double fraction) {
        double whole = Math.rint(fraction * ELEVEN_DECIMALS);
        if (Math.abs(whole) < WHOLE_MOST && whole / ELEVEN_DECIMALS == fraction) {
            return whole / NINE_DECIMALS;
        }
        double percent = fraction * 100;
        return Stream.of(percent, Math.nextUp(percent), Math.nextDown(percent))
            .filter(near -> Percent.toFraction(new BigDecimal(digits(near))) == fraction)
            .min(Comparator.comparingInt(near -> digits(near).length())).orElse(percent);
    }

    /** The fewest digits that keep it, as in answers. */
    private static String digits(double value) {
        return NumberOutput.toString(value, true);
    }

    /** A value that was measured, in percent: the very double that was put, however many digits it has. */
    public static double stated(ReportedValue.Measured measured) {
        String text = measured.asReported();
        boolean isShort = text.length() <= SHORT_TEXT && text.indexOf('e') < 0 && text.indexOf('E') < 0;
        return isShort ? stated(measured.fraction())
            : Double.parseDouble(text.replace(',', '.').replace('\u2212', '-')) + 0.0;
    }
}
