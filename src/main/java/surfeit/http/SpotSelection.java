package surfeit.http;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import surfeit.lab.Laboratory;
import surfeit.lab.Page;
import surfeit.lab.PageRequest;
import surfeit.lab.PublicId;
import surfeit.lab.SpotFilter;
import surfeit.lab.StoredSpot;
import surfeit.segregation.Verdict;

/** The spots of a sample that are wanted: by what is stated of them, and by what they show in a screening. */
final class SpotSelection {
    private final Laboratory laboratory;
    private final String sample;
    private final SpotFilter filter;
    private final Optional<Verdict> verdict;

    SpotSelection(Laboratory laboratory, String sample, SpotFilter filter, Optional<Verdict> verdict) {
        this.laboratory = laboratory;
        this.sample = sample;
        this.filter = filter;
        this.verdict = verdict;
    }

    /** One page of them, in the order of record. */
    Page<StoredSpot> page(PageRequest page) {
        if (verdict.isEmpty()) {
            return laboratory.spots(sample, filter, page);
        }
        long after = page.after().map(Cursor::spotNumber).orElse(0L);
        List<StoredSpot> found = new ArrayList<>();
        forEach(spot -> {
            if (number(spot.id()) > after && found.size() <= page.size()) {
                found.add(spot);
            }
        });
        boolean more = found.size() > page.size();
        List<StoredSpot> items = more ? found.subList(0, page.size()) : found;
        return new Page<>(items, more ? Optional.of(items.get(items.size() - 1).id()) : Optional.empty());
    }

    /** All of them, in the order of record. */
    void forEach(Consumer<StoredSpot> consumer) {
        if (verdict.isEmpty()) {
            laboratory.forEachSpot(sample, filter, consumer);
            return;
        }
        Set<String> showing = new HashSet<>();
        laboratory.forEachReading(sample, reading -> {
            if (reading.reading().shows(verdict)) {
                showing.add(reading.stored().id());
            }
        });
        laboratory.forEachSpot(sample, filter, spot -> {
            if (showing.contains(spot.id())) {
                consumer.accept(spot);
            }
        });
    }

    private static long number(String spotId) {
        return PublicId.number(PublicId.SPOT, spotId).orElse(0);
    }
}
