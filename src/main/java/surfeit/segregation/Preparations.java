package surfeit.segregation;

import java.util.List;
import java.util.Optional;
import surfeit.element.Element;
import surfeit.preparation.Cautions;
import surfeit.preparation.Handling;
import surfeit.segregation.answer.Caveat;
import surfeit.spot.PreparationStep;
import surfeit.spot.Sample;
import surfeit.xray.RecentResults;

/** What the words of a sample's preparation say, kept for the samples asked for last. Thread-safe. */
final class Preparations {
    private static final int SAMPLES_KEPT = 256;

    private final RecentResults<Words, Preparation> known = new RecentResults<>(SAMPLES_KEPT);

    private record Words(Optional<String> mount, List<PreparationStep> steps, List<Element> alloy) {
    }

    /** The recognised substances, notes on the words that were not, and the cautions for alloy and preparation. */
    record Preparation(Handling handling, List<Caveat> unknownWords, List<String> cautions) {
    }

    Preparation of(Sample sample, List<Element> alloy) {
        return known.get(new Words(sample.mount(), sample.preparation(), alloy), () -> {
            Handling handling = Handling.of(sample);
            return new Preparation(handling, handling.unknown().stream().map(SampleCaveats::unknownWords).toList(),
                Cautions.of(handling, alloy));
        });
    }
}
