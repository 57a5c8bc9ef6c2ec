package surfeit.segregation;

import surfeit.composition.Nominal;
import surfeit.spot.Sample;

/**
 * One of two samples to be compared.
 *
 * @param name    the lab's name of it, for the answer's words
 * @param sample  how it was made and measured
 * @param nominal its nominal: its own, or its alloy's
 * @param source  its spots
 */
public record ComparedSample(String name, Sample sample, Nominal nominal, SpotSource source) {
}
