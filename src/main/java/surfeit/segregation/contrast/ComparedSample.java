package surfeit.segregation.contrast;

import java.util.List;
import surfeit.composition.Nominal;
import surfeit.composition.Phase;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Sample;

/**
 * One of two samples to be compared.
 *
 * @param name    the lab's name of it, for the answer's words
 * @param sample  how it was made and measured
 * @param nominal its nominal: its own, or its alloy's
 * @param phases  known phases of its alloy; none known is an empty list
 * @param source  its spots
 */
public record ComparedSample(String name, Sample sample, Nominal nominal, List<Phase> phases, SpotSource source) {
    public ComparedSample {
        phases = List.copyOf(phases);
    }
}
