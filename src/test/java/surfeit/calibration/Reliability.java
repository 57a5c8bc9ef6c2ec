package surfeit.calibration;

import java.util.List;
import surfeit.calibration.Tally.Count;

/**
 * How far {@code confidence} can be relied on in one cell: what it says of samples in which nothing differs, and what
 * it does not say, the share of flags that are false, which depends on how many samples differ at all.
 *
 * <p>The second is shown for two invented worlds, in which 80 or 50 % of samples are exactly nominal and the others
 * shifted as {@link Truth#ANY} says.
 */
record Reliability(Label label, Tally tally) {
    static final double[] NOMINAL_WORLDS = {0.8, 0.5};

    /** The cells made for it. */
    static List<Reliability> of(List<Result> results) {
        return results.stream().filter(result -> result.label().block().equals(OtherCells.RELIABILITY))
            .map(result -> new Reliability(result.label(), result.tally())).toList();
    }

    /** Samples at nominal with a flag at least so sure; promised: at most one less the confidence. */
    Share falseFlagsFrom(int c) {
        return new Share(tally.at(Count.FALSE_FLAG, c), tally.total(Count.NOMINAL));
    }

    /** Samples at the margin called consistent at least so surely, on the worse side; promised likewise. */
    Share consistentAtMarginFrom(int c) {
        return Share.higher(new Share(tally.at(Count.CONSISTENT_ABOVE, c), tally.total(Count.ABOVE_MARGIN)),
            new Share(tally.at(Count.CONSISTENT_BELOW, c), tally.total(Count.BELOW_MARGIN)));
    }

    /** Of the flags in this class of confidence, percent that stand on a sample in which nothing differs. */
    double falsePercent(int c, double nominalShare) {
        return falsePercent(tally.at(Count.FLAG_AT_NOMINAL, c), tally.at(Count.FLAG_AT_SHIFT, c), nominalShare);
    }

    /** The same of all flags. */
    double falsePercent(double nominalShare) {
        return falsePercent(tally.total(Count.FLAG_AT_NOMINAL), tally.total(Count.FLAG_AT_SHIFT), nominalShare);
    }

    private double falsePercent(long atNominal, long atShift, double nominalShare) {
        double wrong = nominalShare * atNominal / tally.total(Count.NOMINAL);
        double right = (1 - nominalShare) * atShift / tally.total(Count.ANY);
        return 100 * wrong / (wrong + right);
    }

    /** Of the flags on shifted samples in this class of confidence, the share with the wrong direction. */
    Share wrongWay(int c) {
        return new Share(tally.at(Count.FLAG_AT_SHIFT_WRONG_WAY, c), tally.at(Count.FLAG_AT_SHIFT, c));
    }

    Share wrongWay() {
        return tally.share(Count.FLAG_AT_SHIFT_WRONG_WAY, Count.FLAG_AT_SHIFT);
    }

    /** Of the leans, percent that are real shifts in that direction. */
    double rightLeansPercent(double nominalShare) {
        double atNominal = nominalShare * tally.total(Count.LEAN_AT_NOMINAL) / tally.total(Count.NOMINAL);
        double atShift = (1 - nominalShare) / tally.total(Count.ANY);
        return 100 * atShift * tally.total(Count.LEAN_AT_SHIFT_RIGHT_WAY)
            / (atNominal + atShift * tally.total(Count.LEAN_AT_SHIFT));
    }
}
