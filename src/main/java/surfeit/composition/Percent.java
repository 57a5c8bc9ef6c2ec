package surfeit.composition;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * Percent at the program's edge, fractions inside: between them only the decimal point moves, so that 60.1 % is the
 * double nearest to 0.601 and shows as 60.1 again.
 */
public final class Percent {
    /** Significant digits that tell any two doubles apart (IEEE 754 binary64). */
    private static final int DIGITS_OF_A_DOUBLE = 17;

    private Percent() {
    }

    /** The fraction nearest to a number of percent. */
    public static double toFraction(BigDecimal percent) {
        return percent.movePointLeft(2).doubleValue();
    }

    /** The shortest number of percent that becomes this fraction again. @throws NumberFormatException unless finite */
    public static BigDecimal ofFraction(double fraction) {
        BigDecimal exact = new BigDecimal(fraction);
        BigDecimal shortest = exact;
        for (int digits = 1; digits <= DIGITS_OF_A_DOUBLE; digits++) {
            shortest = exact.round(new MathContext(digits));
            if (shortest.doubleValue() == fraction) {
                break;
            }
        }
        BigDecimal percent = shortest.movePointRight(2).stripTrailingZeros();
        return percent.scale() < 0 ? percent.setScale(0) : percent;
    }

    /** The same as text with its unit sign, for messages: {@code 60.1 %}. */
    static String text(double fraction) {
        return Double.isFinite(fraction) ? ofFraction(fraction).toPlainString() + " %" : String.valueOf(fraction);
    }

    /** A computed fraction as text with six digits, for messages. */
    static String rounded(double fraction) {
        return Double.isFinite(fraction)
            ? text(new BigDecimal(fraction).round(new MathContext(6)).doubleValue()) : String.valueOf(fraction);
    }
}
