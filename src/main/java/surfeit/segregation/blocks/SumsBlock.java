package surfeit.segregation.blocks;

/**
 * Sums of full blocks of a sample's spots, to be kept.
 *
 * @param number    which block, counted from 1
 * @param lastPlace place in the record of its last spot
 * @param bytes     the sums
 */
public record SumsBlock(int number, long lastPlace, byte[] bytes) {
}
