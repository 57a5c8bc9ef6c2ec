package surfeit.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import surfeit.calibration.Tally.Count;

/**
 * What many samples of one cell showed, held against the targets.
 *
 * <p>A figure misses its target only where it lies beyond it by more than its Monte Carlo error. A cell that misses is
 * looked at a second time with fresh seeds and four times the samples, and then the second look alone counts: of some
 * hundred true figures close to a target one in forty would miss at one look by chance.
 *
 * @param look 1, or 2 for a cell that was looked at again
 */
record Result(Label label, Tally tally, int look) {
    static final double COVERAGE_FROM = 93.5;
    static final double COVERAGE_TO = 96.5;
    static final double FALSE_FLAGS_TO = 5;
    static final double CONSISTENT_TO = 5.5;
    static final String TOO_LITTLE = "covers too little";
    static final String TOO_MUCH = "covers too much";
    static final String FALSE_FLAGS = "false flags";
    static final String ALIKE = "consistent at the margin";

    /** Share of samples whose interval covers the truth, of the element it covers least often. */
    Share lowestCoverage() {
        return tally.coverage().stream().reduce(Share::lower).orElseThrow();
    }

    Share highestCoverage() {
        return tally.coverage().stream().reduce(Share::higher).orElseThrow();
    }

    /** Share of samples with any flag while nothing differs. */
    Share falseFlags() {
        return tally.share(Count.FALSE_FLAG, Count.NOMINAL);
    }

    Share consistentAtNominal() {
        return tally.share(Count.CONSISTENT_AT_NOMINAL, Count.NOMINAL);
    }

    /** Share of samples at the margin whose element is called consistent, on the side where it happens more often. */
    Share consistentAtMargin() {
        return Share.higher(tally.share(Count.CONSISTENT_ABOVE, Count.ABOVE_MARGIN),
            tally.share(Count.CONSISTENT_BELOW, Count.BELOW_MARGIN));
    }

    Share power() {
        return tally.share(Count.SHIFT_FLAGGED, Count.SHIFTED);
    }

    /** Share of samples with a shift whose element is flagged the wrong way. */
    Share wrongWay() {
        return tally.share(Count.SHIFT_FLAGGED_WRONGLY, Count.SHIFTED);
    }

    /** The targets this cell is held to and misses, in words. */
    List<String> misses() {
        List<String> misses = new ArrayList<>();
        if (label.promise() == Label.Promise.FULL) {
            if (lowestCoverage().isSurelyBelow(COVERAGE_FROM)) {
                misses.add(TOO_LITTLE);
            }
            if (highestCoverage().isSurelyAbove(COVERAGE_TO)) {
                misses.add(TOO_MUCH);
            }
        }
        if (label.promise() != Label.Promise.OUTSIDE) {
            if (falseFlags().isSurelyAbove(FALSE_FLAGS_TO)) {
                misses.add(FALSE_FLAGS);
            }
            if (consistentAtMargin().isSurelyAbove(CONSISTENT_TO)) {
                misses.add(ALIKE);
            }
        }
        return misses;
    }

    String status() {
        List<String> misses = misses();
        if (misses.isEmpty()) {
            return label.promise() == Label.Promise.FULL ? "holds" : label.promise().words();
        }
        return "MISS: " + String.join(", ", misses) + knownWeakness().map(why -> " (" + why + ")").orElse("");
    }

    /** Why this cell misses, where that is known and lies in the method; a miss without it is a fault to be found. */
    Optional<String> knownWeakness() {
        List<String> misses = misses();
        if (label.block().equals(MinorCells.NOT_DETECTED) && misses.equals(List.of(TOO_MUCH))) {
            return Optional.of("wide on purpose: anything from 0 to the limit");
        }
        if (label.particles().equals("1") && label.spots() == 1 && label.scatter() == Scatter.HEAVY
            && misses.equals(List.of(FALSE_FLAGS))) {
            return Optional.of("one spot's stated uncertainty counts as known and normal");
        }
        return Optional.empty();
    }

    static String text(Share share) {
        return share.isKnown() ? String.format(Locale.ROOT, "%.1f +-%.1f", share.percent(), share.error()) : "-";
    }
}
