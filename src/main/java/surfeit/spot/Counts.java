package surfeit.spot;

/** Net and background counts of one line in one spectrum; net may be negative after background subtraction. */
public record Counts(double net, double background) {
    public Counts {
        if (!Double.isFinite(net) || !(background >= 0) || Double.isInfinite(background)) {
            throw new IllegalArgumentException(
                "Counts are finite and the background is at least 0, got net " + net + ", background " + background + ".");
        }
    }
}
