package surfeit.calibration;

/**
 * What the program said of one element of one invented sample, beside the truth.
 *
 * @param truth      what the interval should cover
 * @param low        lower end of the 95 % interval
 * @param high       upper end
 * @param flag       1 for enriched or higher, -1 for depleted or lower, else 0
 * @param alike      true for consistent or equivalent
 * @param confidence as answered; NaN where nothing was shown
 * @param lean       direction the data lean to while nothing is shown, else 0
 * @param shift      true direction: sign of truth against nominal or other side, 0 where there is none
 */
record Said(double truth, double low, double high, int flag, boolean alike, double confidence, int lean, int shift) {
    boolean isCovered() {
        return low <= truth && truth <= high;
    }
}
