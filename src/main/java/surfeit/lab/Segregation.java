package surfeit.lab;

import java.util.Optional;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.Interpretation;
import surfeit.spot.Sample;

/**
 * The answer for a sample, with what it was made from.
 *
 * @param sample         the description it was judged by
 * @param alloy          the alloy whose nominal was used, if the sample does not state its own
 * @param stored         the sample on record; absent where sample and spots came with the question
 * @param interpretation what the spots show
 */
public record Segregation(Sample sample, Optional<StoredAlloy> alloy, Optional<StoredSample> stored,
                          Interpretation interpretation) {

    /** The same answer with something more to know about it, if there is anything. */
    public Segregation with(Optional<Caveat> caveat) {
        return caveat.map(known -> new Segregation(sample, alloy, stored, interpretation.with(known))).orElse(this);
    }
}
