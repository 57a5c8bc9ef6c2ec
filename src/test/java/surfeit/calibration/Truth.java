package surfeit.calibration;

/** How far the invented composition lies from nominal (or one side of a contrast from the other). */
enum Truth {
    /** Nothing differs: every flag is false. */
    NOMINAL,
    /** One element lies exactly at the margin, odds ratio 1.25 or its inverse: every "consistent" is false. */
    MARGIN,
    /** One element has the odds ratio the cell calls a shift, or its inverse: flags show power. */
    SHIFTED,
    /** The particles measured differ from nominal by their own scatter: only coverage is counted. */
    OWN,
    /** One element has a log odds ratio drawn from a normal distribution of standard deviation 0.4, invented. */
    ANY;

    static final double MARGIN_LOG_ODDS = Math.log(1.25);
    private static final double ANY_DEVIATION = 0.4;

    /** Log odds ratio of one sample; {@code shifted} is what the cell calls a shift, only downwards where negative. */
    double logOdds(double shifted, Dice dice) {
        return switch (this) {
            case NOMINAL, OWN -> 0;
            case MARGIN -> dice.coin() ? MARGIN_LOG_ODDS : -MARGIN_LOG_ODDS;
            case SHIFTED -> shifted > 0 && dice.coin() ? -shifted : shifted;
            case ANY -> ANY_DEVIATION * dice.normal();
        };
    }
}
