package surfeit.http;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import surfeit.http.board.SampleLine;
import surfeit.lab.InputRevisions;
import surfeit.lab.Laboratory;
import surfeit.lab.ProblemException;
import surfeit.lab.StoredAlloy;
import surfeit.lab.StoredSample;
import surfeit.report.Highlights;
import surfeit.report.Signs;
import surfeit.segregation.answer.GroupBy;
import surfeit.xray.RecentResults;

/**
 * The strongest findings of samples for the list, kept by the revisions they were made from: a sample that did not
 * change is not interpreted again. Bounded, thread-safe.
 */
final class StrongestFindings {
    /** Samples whose findings are kept; some 600 bytes each. Judgement: more than a lab looks through in a day. */
    private static final int KEPT = 16_384;
    /** A list does not wait for a sample of more spots than this; its own page does. Judgement. */
    private static final long MOST_SPOTS = 20_000;

    /** Revision that stands for an alloy nobody knows; asking for it is refused with the reason. */
    private static final long NO_ALLOY = -1;

    private final Laboratory laboratory;
    private final RecentResults<Key, SampleLine> known = new RecentResults<>(KEPT);

    StrongestFindings(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    private record Key(String sample, InputRevisions inputs) {
    }

    /** Counts how often an answer had to be made. */
    static final class Effort {
        private int made;

        int made() {
            return made;
        }
    }

    /**
     * The sample with its strongest findings.
     *
     * @param alloys the alloys there are, by id
     * @param effort is told where they had to be made
     */
    SampleLine of(StoredSample sample, Map<String, StoredAlloy> alloys, Effort effort) {
        if (sample.spotCount() > MOST_SPOTS) {
            return new SampleLine(sample, 0, Optional.empty(), "Many spots: its own page has the answer.");
        }
        OptionalLong alloy = sample.sample().nominal().isPresent() ? OptionalLong.empty()
            : OptionalLong.of(Optional.ofNullable(alloys.get(sample.sample().alloy().orElseThrow()))
                .map(StoredAlloy::revision).orElse(NO_ALLOY));
        InputRevisions inputs = new InputRevisions(sample.revision(), alloy);
        return known.get(new Key(sample.name(), inputs), () -> {
            effort.made++;
            return made(sample, inputs);
        });
    }

    private SampleLine made(StoredSample sample, InputRevisions inputs) {
        try {
            return new SampleLine(sample, inputs.alloy().orElse(0), Optional.of(Highlights.of(
                laboratory.segregation(sample.name(), inputs, GroupBy.FEATURE).interpretation(), Signs.UNICODE)), "");
        } catch (ProblemException refusal) {
            return new SampleLine(sample, inputs.alloy().orElse(0), Optional.empty(), refusal.getMessage());
        }
    }
}
