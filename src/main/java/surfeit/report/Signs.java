package surfeit.report;

import java.nio.charset.Charset;

/** The signs that not every terminal can show: times before a factor, plus or minus before an uncertainty, micro. */
public enum Signs {
    /** {@code x} and {@code +-}: readable everywhere. */
    ASCII("x", "+-"),
    /** The multiplication and the plus-minus sign. */
    UNICODE("\u00d7", "\u00b1");

    private final String times;
    private final String plusMinus;

    Signs(String times, String plusMinus) {
        this.times = times;
        this.plusMinus = plusMinus;
    }

    /** The better signs that this character set can carry. */
    public static Signs forCharset(Charset charset) {
        boolean can = charset.canEncode() && charset.newEncoder().canEncode(UNICODE.times + UNICODE.plusMinus + "\u00b5\u00b2");
        return can ? UNICODE : ASCII;
    }

    public String times() {
        return times;
    }

    public String plusMinus() {
        return plusMinus;
    }

    /** A sentence with its units (micrometres, squares) in these signs. */
    public String units(String sentence) {
        return this == UNICODE ? sentence : sentence.replace('\u00b5', 'u').replace('\u00b2', '2');
    }
}
