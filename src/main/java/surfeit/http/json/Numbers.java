package surfeit.http.json;

/** Numbers on their way out. */
public final class Numbers {
    private static final double NINE_DECIMALS = 1e9;
    private static final int LAST_BITS = 2;

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
}
