package surfeit.segregation.blocks;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import surfeit.segregation.answer.GroupBy;
import surfeit.spot.Spot;
import surfeit.statistics.NumbersAside;

/**
 * The spots of one sample, readable more than once and always in the same order.
 *
 * <p>Specimen spots are handed over one by one, so that a large sample need not be held in memory.
 */
public interface SpotSource {

    /** The spots measured on pieces of known composition. */
    List<Spot> references();

    /**
     * Hands over every spot that was ever recorded, in the order they were recorded: those of the specimen count, the
     * others, withdrawn or on a reference piece, only have their places.
     */
    void forEachPlace(SpotPlaces places);

    /** Hands every spot of the specimen to the consumer, in the order they were recorded. */
    default void forEachSpecimen(Consumer<Spot> consumer) {
        forEachPlace((place, spot, counts) -> {
            if (counts) {
                consumer.accept(spot);
            }
        });
    }

    /** Places after which the sums begin with a new block: part of what a sum is to its last bit. */
    default int placesInBlock() {
        return SpotBlock.PLACES;
    }

    /** Sums kept of the first of these spots, groups put together so; empty where none are kept. */
    default Optional<KeptSums> kept(GroupBy by) {
        return Optional.empty();
    }

    /** Room for numbers about its spots that may be too many for memory; in memory where the spots are. */
    default NumbersAside aside() {
        return NumbersAside.inMemory();
    }

    /** A source over a list of spots, reference spots among them. */
    static SpotSource of(List<Spot> spots) {
        List<Spot> references = spots.stream().filter(Spot::isReference).toList();
        return new SpotSource() {
            @Override
            public List<Spot> references() {
                return references;
            }

            @Override
            public void forEachPlace(SpotPlaces places) {
                for (int i = 0; i < spots.size(); i++) {
                    places.next(i + 1, spots.get(i), !spots.get(i).isReference());
                }
            }
        };
    }
}
