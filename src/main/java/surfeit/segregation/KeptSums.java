package surfeit.segregation;

import java.util.function.Consumer;
import surfeit.spot.Spot;

/** Sums kept of the first spots of a source, to go on from with the later ones; made by {@link SampleSums}. */
public interface KeptSums {

    /** The sums as they were kept. */
    byte[] bytes();

    /** Where the later spots begin: sums of one source with the same mark have the same later spots. */
    long mark();

    /** Hands over every spot of the specimen that is not in the sums, in the order they were recorded. */
    void forEachLater(Consumer<Spot> consumer);
}
