package surfeit.report;

/**
 * Turns the fractions used inside the program into the percent shown outside; the one place to do so for JSON and CSV.
 */
public final class Percent {
    private static final double GRID = 1e10;

    private Percent() {
    }

    /**
     * A fraction in percent, without the last-bit noise of the multiplication: 0.601 gives 60.1, not
     * 60.099999999999994.
     */
    public static double of(double fraction) {
        double percent = fraction * 100;
        double round = Math.rint(percent * GRID) / GRID;
        return Math.abs(round - percent) <= Math.ulp(percent) ? round : percent;
    }
}
