package surfeit.calibration;

import java.util.ArrayList;
import java.util.List;

/** Counts over many answers of one cell; tallies of batches add up in any order. Not thread-safe. */
final class Tally {
    /** Confidence a verdict reached, lower ends; also the classes of the reliability table. */
    static final double[] CONFIDENCE = {0.95, 0.99, 0.999};

    /** What is counted; with {@link #CONFIDENCE} the counts of verdicts at least (samples) or just (flags) so sure. */
    enum Count {
        NOMINAL, FALSE_FLAG, CONSISTENT_AT_NOMINAL,
        ABOVE_MARGIN, CONSISTENT_ABOVE, BELOW_MARGIN, CONSISTENT_BELOW,
        SHIFTED, SHIFT_FLAGGED, SHIFT_FLAGGED_WRONGLY,
        FLAG_AT_NOMINAL, FLAG_AT_SHIFT, FLAG_AT_SHIFT_WRONG_WAY,
        ANY, LEAN_AT_NOMINAL, LEAN_AT_SHIFT, LEAN_AT_SHIFT_RIGHT_WAY
    }

    private final long[][] counts = new long[Count.values().length][CONFIDENCE.length + 1];
    private final List<long[]> coverage = new ArrayList<>();

    void add(Truth truth, Answer answer) {
        for (int i = 0; i < answer.elements().size(); i++) {
            if (coverage.size() <= i) {
                coverage.add(new long[2]);
            }
            coverage.get(i)[0] += answer.elements().get(i).isCovered() ? 1 : 0;
            coverage.get(i)[1]++;
        }
        switch (truth) {
            case NOMINAL -> nominal(answer);
            case MARGIN -> margin(answer);
            case SHIFTED -> shifted(answer);
            case ANY -> any(answer);
            case OWN -> { }
        }
    }

    private void nominal(Answer answer) {
        count(Count.NOMINAL, true, 1);
        count(Count.FALSE_FLAG, answer.isFlagged(), answer.highestConfidence());
        count(Count.CONSISTENT_AT_NOMINAL, answer.movedElement().alike(), answer.movedElement().confidence());
        for (Said said : counted(answer)) {
            just(Count.FLAG_AT_NOMINAL, said.flag() != 0, said.confidence());
            just(Count.LEAN_AT_NOMINAL, said.lean() != 0, 0);
        }
    }

    private void margin(Answer answer) {
        boolean above = answer.logOdds() > 0;
        Said said = answer.movedElement();
        count(above ? Count.ABOVE_MARGIN : Count.BELOW_MARGIN, true, 1);
        count(above ? Count.CONSISTENT_ABOVE : Count.CONSISTENT_BELOW, said.alike(), said.confidence());
    }

    private void shifted(Answer answer) {
        Said said = answer.movedElement();
        count(Count.SHIFTED, true, 1);
        count(Count.SHIFT_FLAGGED, said.flag() == said.shift(), said.confidence());
        count(Count.SHIFT_FLAGGED_WRONGLY, said.flag() == -said.shift(), said.confidence());
    }

    private void any(Answer answer) {
        count(Count.ANY, true, 1);
        for (Said said : counted(answer)) {
            just(Count.FLAG_AT_SHIFT, said.flag() != 0, said.confidence());
            just(Count.FLAG_AT_SHIFT_WRONG_WAY, said.flag() == -said.shift(), said.confidence());
            just(Count.LEAN_AT_SHIFT, said.lean() != 0, 0);
            just(Count.LEAN_AT_SHIFT_RIGHT_WAY, said.lean() == said.shift(), 0);
        }
    }

    /** Two elements are one test and say the same with opposite signs. */
    private static List<Said> counted(Answer answer) {
        return answer.mirrored() ? answer.elements().subList(0, 1) : answer.elements();
    }

    /** Counts in total, and for every confidence reached. */
    private void count(Count what, boolean happened, double confidence) {
        long[] own = counts[what.ordinal()];
        own[0] += happened ? 1 : 0;
        for (int c = 0; c < CONFIDENCE.length; c++) {
            own[c + 1] += happened && confidence >= CONFIDENCE[c] ? 1 : 0;
        }
    }

    /** Counts in total, and for the highest confidence reached alone. */
    private void just(Count what, boolean happened, double confidence) {
        long[] own = counts[what.ordinal()];
        own[0] += happened ? 1 : 0;
        for (int c = CONFIDENCE.length - 1; c >= 0 && happened; c--) {
            if (confidence >= CONFIDENCE[c]) {
                own[c + 1]++;
                return;
            }
        }
    }

    Tally plus(Tally other) {
        for (int w = 0; w < counts.length; w++) {
            for (int c = 0; c < counts[w].length; c++) {
                counts[w][c] += other.counts[w][c];
            }
        }
        for (int i = 0; i < other.coverage.size(); i++) {
            if (coverage.size() <= i) {
                coverage.add(new long[2]);
            }
            coverage.get(i)[0] += other.coverage.get(i)[0];
            coverage.get(i)[1] += other.coverage.get(i)[1];
        }
        return this;
    }

    long total(Count what) {
        return counts[what.ordinal()][0];
    }

    /** Count of the confidence class {@code c} of {@link #CONFIDENCE}. */
    long at(Count what, int c) {
        return counts[what.ordinal()][c + 1];
    }

    /** Covered share per element. */
    List<Share> coverage() {
        return coverage.stream().map(of -> new Share(of[0], of[1])).toList();
    }

    Share share(Count what, Count of) {
        return new Share(total(what), total(of));
    }
}
