package surfeit.segregation;

import java.util.function.Consumer;
import surfeit.spot.Spot;

/** Sums kept of the first spots of a source, to go on from with the later ones; made by {@link SampleSums}. */
public interface KeptSums {

    /** The sums as they were kept. */
    byte[] bytes();

    /** Hands over every spot of the specimen that is not in the sums, in the order they were recorded. */
    void forEachLater(Consumer<Spot> consumer);
}
