package surfeit.rival;

/** Numbers in sentences, to three figures, without a locale. */
final class Words {
    private static final double[] POWERS = {1, 10, 100, 1000, 10000};

    private Words() {
    }

    /** A fraction as percent without its sign: 0.1234 is "12.3". */
    static String percent(double fraction) {
        return number(fraction * 100);
    }

    /** To three figures, at most four decimals, no trailing zeros. */
    static String number(double value) {
        double size = Math.abs(value);
        int decimals = size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : size >= 0.1 ? 3 : 4;
        long scaled = Math.round(size * POWERS[decimals]);
        while (decimals > 0 && scaled % 10 == 0) {
            scaled /= 10;
            decimals--;
        }
        if (decimals == 0) {
            return (value < 0 && scaled > 0 ? "-" : "") + scaled;
        }
        long whole = scaled / (long) POWERS[decimals];
        long rest = scaled % (long) POWERS[decimals];
        StringBuilder text = new StringBuilder(8).append(value < 0 ? "-" : "").append(whole).append('.');
        for (double first = POWERS[decimals - 1]; rest < first && first > 1; first /= 10) {
            text.append('0');
        }
        return text.append(rest).toString();
    }
}
