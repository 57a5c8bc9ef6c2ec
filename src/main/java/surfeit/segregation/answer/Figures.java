package surfeit.segregation.answer;

/** Numbers in sentences: so many significant digits, a decimal point, no exponent. */
public final class Figures {
    private static final int DECIMALS_MOST = 12;

    private Figures() {
    }

    /** The number with this many significant digits; trailing zeros among them are kept. */
    public static String of(double value, int digits) {
        double size = Math.abs(value);
        if (!(size > 0) || Double.isInfinite(size)) {
            return size == 0 ? "0" : Double.toString(value);
        }
        int decimals = Math.min(digits - 1 - (int) Math.floor(Math.log10(size)), DECIMALS_MOST);
        if (decimals <= 0) {
            double step = Math.pow(10, -decimals);
            return sign(value) + Math.round(size / step) * Math.round(step);
        }
        return fixed(value, decimals);
    }

    /** The number with this many decimals. */
    public static String fixed(double value, int decimals) {
        long scale = Math.round(Math.pow(10, decimals));
        long scaled = Math.round(Math.abs(value) * scale);
        StringBuilder text = new StringBuilder(sign(value)).append(scaled / scale);
        if (decimals > 0) {
            String fraction = Long.toString(scaled % scale);
            text.append('.').append("0".repeat(decimals - fraction.length())).append(fraction);
        }
        return text.toString();
    }

    private static String sign(double value) {
        return value < 0 ? "-" : "";
    }
}
