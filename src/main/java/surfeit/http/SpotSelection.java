package surfeit.http;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;
import surfeit.lab.Laboratory;
import surfeit.lab.Page;
import surfeit.lab.PageRequest;
import surfeit.lab.SpotFilter;
import surfeit.lab.StoredSample;
import surfeit.lab.StoredSpot;
import surfeit.segregation.answer.Verdict;

/** The spots of a sample that are wanted: by what is stated of them, and by what they show in a screening. */
final class SpotSelection {
    private final Laboratory laboratory;
    private final StoredSample sample;
    private final SpotFilter filter;
    private final Optional<Verdict> verdict;

    /** @param sample now, or as it was at a revision */
    SpotSelection(Laboratory laboratory, StoredSample sample, SpotFilter filter, Optional<Verdict> verdict) {
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
        List<StoredSpot> found = new ArrayList<>();
        showing(page.after().map(Cursor::spotNumber).orElse(0L), spot -> {
            found.add(spot);
            return found.size() <= page.size();
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
        showing(0, spot -> {
            consumer.accept(spot);
            return true;
        });
    }

    private void showing(long after, Predicate<StoredSpot> taken) {
        laboratory.readings().forEach(sample, after, reading -> !reading.reading().shows(verdict)
            || !filter.matches(reading.stored()) || taken.test(reading.stored()));
    }
}
