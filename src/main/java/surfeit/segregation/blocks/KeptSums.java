package surfeit.segregation.blocks;

import java.util.List;
import java.util.Optional;

/**
 * Sums kept of the first spots of a source, to go on from with the later ones; made by {@link SampleSums}.
 *
 * <p>The spots are summed up in blocks of as many places ({@link SpotSource#placesInBlock}); the last block is open, and
 * grows. Of the blocks before it there are the sums of all together and, unless they are too many, of each by itself.
 */
public interface KeptSums {

    /** The sums of the open block as they were kept. */
    byte[] bytes();

    /** The sums of all full blocks together as they were kept; empty where there is none. */
    Optional<byte[]> fullBlocks();

    /** The note that was kept beside them. */
    byte[] notes();

    /** Place of the last spot in the sums: those of one source with the same mark have the same later spots. */
    long mark();

    /** Hands over every spot that came after those in the sums. */
    void forEachLater(SpotPlaces places);

    /** Hands over every spot that came after the full blocks. */
    void forEachAfterFull(SpotPlaces places);

    /** The full blocks each by itself, in their order; empty where there are none or they are not kept. */
    List<Block> blocks();

    /** One full block. */
    interface Block {
        /** Place of its last spot. */
        long lastPlace();

        /** Its sums as they were kept. */
        byte[] bytes();

        /** Hands over every spot that lies in it. */
        void forEachSpot(SpotPlaces places);
    }
}
