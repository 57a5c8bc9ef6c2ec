package surfeit.lab;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import surfeit.segregation.SpotSource;
import surfeit.spot.Spot;

/**
 * The recorded spots of a sample at one revision as a source that may be read for as long as its reader likes: it holds
 * no transaction.
 */
final class RecordedSpots implements SpotSource {
    private final Consumer<Consumer<StoredSpot>> all;

    /** @param all hands over all spots in the order of record, as often as it is called */
    RecordedSpots(Consumer<Consumer<StoredSpot>> all) {
        this.all = all;
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
    public void forEachSpecimen(Consumer<Spot> consumer) {
        all.accept(stored -> {
            if (!stored.spot().isReference()) {
                consumer.accept(stored.spot());
            }
        });
    }
}
