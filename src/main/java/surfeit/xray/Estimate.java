package surfeit.xray;

/**
 * A modelled value with the bounds that comparison against independent calculations leaves for it.
 *
 * <p>{@code low <= value <= high}, in the unit of the quantity. The bounds are limits found in comparisons, not a
 * confidence interval. Immutable, thread-safe.
 */
public record Estimate(double value, double low, double high) {

    public Estimate {
        if (!(low <= value && value <= high)) {
            throw new IllegalArgumentException("Expected low <= value <= high, got " + low + ", " + value
                + ", " + high + ".");
        }
    }

    /** A value whose model read between {@code lowRatio} and {@code highRatio} times the truth. */
    static Estimate ofRatios(double value, double lowRatio, double highRatio) {
        return new Estimate(value, value / highRatio, value / lowRatio);
    }
}
