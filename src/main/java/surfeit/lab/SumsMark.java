package surfeit.lab;

/**
 * How far the sums kept of a sample go.
 *
 * @param revision      revision of the sample they stand at
 * @param lastSpot      number of the last spot in them; every earlier spot of the sample is in them too
 * @param spotCount     spots on record at that revision, reference spots too
 * @param particleCount particles in them
 * @param hasSums       false where it is only noted that this sample has no sums that can be kept
 */
public record SumsMark(long revision, long lastSpot, long spotCount, int particleCount, boolean hasSums) {
}
