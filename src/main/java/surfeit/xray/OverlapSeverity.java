package surfeit.xray;

/**
 * How badly two lines run into each other, by r = separation / FWHM at the mean energy.
 *
 * <p>Severe under 0.25, strong under 0.5, partial under 1, shoulder under 1.5, else resolved. The classes are this
 * project's convention. An overlap is a warning, not a rejection: with many counts, peak fitting solves pairs such as
 * S Ka with Mo La or Si Ka with W Ma (Newbury &amp; Ritchie, J. Mater. Sci. 50 (2015) 493, abstract).
 */
public enum OverlapSeverity {
    SEVERE(0.25), STRONG(0.5), PARTIAL(1), SHOULDER(1.5), RESOLVED(Double.POSITIVE_INFINITY);

    private final double below;

    OverlapSeverity(double below) {
        this.below = below;
    }

    /** The class of a separation in widths. */
    public static OverlapSeverity of(double ratio) {
        for (OverlapSeverity severity : values()) {
            if (ratio < severity.below) {
                return severity;
            }
        }
        return RESOLVED;
    }
}
