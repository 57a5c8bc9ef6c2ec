package surfeit.lab;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import surfeit.segregation.blocks.SpotPlaces;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Spot;
import surfeit.statistics.NumbersAside;

/**
 * The recorded spots of a sample at one revision as a source that may be read for as long as its reader likes: it holds
 * no transaction. Withdrawn spots have no place in it: it is for readings of single spots, of which no sum is told.
 */
final class RecordedSpots implements SpotSource {
    private final Consumer<Consumer<StoredSpot>> all;
    private final Supplier<NumbersAside> aside;

    /**
     * @param all   hands over all spots in the order of record, as often as it is called
     * @param aside room for numbers about them that are too many for memory
     */
    RecordedSpots(Consumer<Consumer<StoredSpot>> all, Supplier<NumbersAside> aside) {
        this.all = all;
        this.aside = aside;
    }

    @Override
    public List<Spot> references() {
        List<Spot> references = new ArrayList<>();
        all.accept(stored -> {
            if (stored.spot().isReference()) {
                references.add(stored.spot());
            }
        });
        return references;
    }

    @Override
    public void forEachPlace(SpotPlaces places) {
        all.accept(stored -> places.next(Lookups.spotNumber(stored.id()), stored.spot(), !stored.spot().isReference()));
    }

    @Override
    public NumbersAside aside() {
        return aside.get();
    }
}
