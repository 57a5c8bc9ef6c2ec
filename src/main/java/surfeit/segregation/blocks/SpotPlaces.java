package surfeit.segregation.blocks;

import surfeit.spot.Spot;

/** Takes the spots of a sample in the order they were recorded, those among them that do not count. */
@FunctionalInterface
public interface SpotPlaces {

    /**
     * The next spot.
     *
     * @param place  its place in the record, which it keeps; higher than that of the spot before
     * @param counts false for a spot that is withdrawn or lies on a reference piece
     */
    void next(long place, Spot spot, boolean counts);
}
