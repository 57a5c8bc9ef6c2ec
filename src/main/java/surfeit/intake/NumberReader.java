package surfeit.intake;

import java.math.BigDecimal;
import java.util.Optional;
import surfeit.element.Spelling;

/**
 * Reads printed numbers with one decimal mark for a whole upload: the stated one, or the first that is met.
 *
 * <p>Numbers without a mark say nothing of it and are read alike either way, so the mark may be met late. A number with
 * another mark afterwards is refused, and so is one with thousands separators. Outside the percent columns a text such
 * as {@code 1,234} could mean either and does not decide; it is refused until another number or the sender has decided.
 * Values are rounded once, correctly: {@code 62.40} percent becomes the double nearest 0.624. Signs (the typographic
 * minus U+2212 too) and exponents of up to two digits are read; NaN, infinity and hexadecimal numbers are not.
 * Not thread-safe: one per upload.
 */
public final class NumberReader {
    /** Most characters of one number; workstations print some ten. Judgement; it bounds the work a text can cause. */
    public static final int LENGTH_MAX = 40;
    private static final double[] POWERS_OF_TEN = {1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12,
        1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
    /** Decimal digits that always fit a double's 53-bit significand. */
    private static final int EXACT_DIGITS = 15;
    private static final char UNDECIDED = 0;
    private static final char MINUS = '\u2212';

    private char mark;
    private String decidedBy;

    private NumberReader(char mark, String decidedBy) {
        this.mark = mark;
        this.decidedBy = decidedBy;
    }

    /** A reader that takes the first mark it meets. */
    public static NumberReader detecting() {
        return new NumberReader(UNDECIDED, "");
    }

    /** A reader with a stated mark, {@code .} or {@code ,}; a point for the numbers of JSON itself. */
    public static NumberReader withMark(char mark) {
        if (mark != '.' && mark != ',') {
            throw new IllegalArgumentException("A decimal mark is . or , got " + mark + ".");
        }
        return new NumberReader(mark, "it was stated");
    }

    static NumberReader of(StatedDialect stated) {
        return stated.decimal().map(NumberReader::withMark).orElseGet(NumberReader::detecting);
    }

    /** The mark, once a number had one. */
    public Optional<Character> mark() {
        return mark == UNDECIDED ? Optional.empty() : Optional.of(mark);
    }

    /** A printed percentage as a fraction, with or without its sign. @throws Refusal if it is no number of this upload */
    public double percentAsFraction(String text) {
        int end = text.length() - 1;
        boolean signed = end > 0 && (text.charAt(end) == '%' || text.charAt(end) == '\uFF05');
        return read(signed ? CellText.strip(text.substring(0, end)) : text, 2);
    }

    /** A printed number in its own unit. @throws Refusal if it is no number of this upload */
    public double number(String text) {
        return read(text, 0);
    }

    private double read(String text, int shift) {
        int length = text.length();
        if (length == 0 || length > LENGTH_MAX) {
            throw notANumber(text);
        }
        char first = text.charAt(0);
        boolean negative = first == '-' || first == MINUS;
        int i = negative || first == '+' ? 1 : 0;
        long mantissa = 0;
        int digits = 0;
        int markAt = -1;
        for (; i < length; i++) {
            char c = text.charAt(i);
            if (c >= '0' && c <= '9') {
                mantissa = ++digits <= EXACT_DIGITS ? mantissa * 10 + (c - '0') : mantissa;
            } else if ((c == '.' || c == ',') && markAt < 0) {
                markAt = i;
            } else {
                break;
            }
        }
        if (digits == 0 || i < length && (first == MINUS || !isExponent(text, i))) {
            throw PrintedNumber.isDate(text) ? date(text) : PrintedNumber.isGrouped(text) ? grouped(text) : notANumber(text);
        }
        if (markAt >= 0) {
            use(text.charAt(markAt), text, shift == 0);
        }
        int scale = shift + (markAt < 0 ? 0 : i - markAt - 1);
        double magnitude = i == length && digits <= EXACT_DIGITS
            ? mantissa / POWERS_OF_TEN[scale]
            : exact(text, shift);
        return negative && magnitude != 0 ? -magnitude : magnitude;
    }

    private static boolean isExponent(String text, int at) {
        int digitsAt = at + 1;
        if (text.charAt(at) != 'e' && text.charAt(at) != 'E' || digitsAt == text.length()) {
            return false;
        }
        if (text.charAt(digitsAt) == '-' || text.charAt(digitsAt) == '+') {
            digitsAt++;
        }
        int digits = text.length() - digitsAt;
        return digits >= 1 && digits <= 2 && text.chars().skip(digitsAt).allMatch(c -> c >= '0' && c <= '9');
    }

    private static double exact(String text, int shift) {
        return new BigDecimal(text.replace(',', '.').replace(MINUS, '-')).movePointLeft(shift).abs().doubleValue();
    }

    private void use(char found, String text, boolean mayBeThousands) {
        if (mark == UNDECIDED) {
            if (mayBeThousands && PrintedNumber.maySeparateThousands(text)) {
                throw Refusal.expected(FaultCode.MIXED_DECIMAL_MARKS, "a number whose decimal mark is certain",
                    Spelling.quoted(text) + ", where " + found + " may separate thousands; state the decimal mark");
            }
            mark = found;
            decidedBy = Spelling.quoted(text) + " has it";
        } else if (mark != found) {
            throw Refusal.expected(FaultCode.MIXED_DECIMAL_MARKS, "the decimal mark " + mark + " of this upload ("
                + decidedBy + ")", Spelling.quoted(text));
        }
    }

    static Refusal date(String text) {
        return Refusal.expected(FaultCode.VALUE_OUT_OF_RANGE, "a number such as 62.4", Spelling.quoted(text)
            + ", a date; a spreadsheet may have made it of a number, then format the column as text and enter it again");
    }

    private static Refusal grouped(String text) {
        return Refusal.expected(FaultCode.MIXED_DECIMAL_MARKS, "a number without thousands separators",
            Spelling.quoted(text));
    }

    private static Refusal notANumber(String text) {
        return new Refusal(FaultCode.VALUE_OUT_OF_RANGE, text.length() > LENGTH_MAX
            ? "Expected a number of at most " + LENGTH_MAX + " characters, found " + text.length() + "."
            : "Expected a number such as 62.4, found " + Spelling.quoted(text) + ".");
    }
}
