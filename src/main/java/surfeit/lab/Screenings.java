package surfeit.lab;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import surfeit.segregation.screening.SpotScreening;

/**
 * Screenings made already, so that a page of readings costs its own spots and not those of the whole sample. A
 * screening holds for the revisions it was made from, for ever. Thread-safe.
 */
final class Screenings {
    /** Numbers kept in all, in memory or on disk, besides those of the newest screening. Judgement: some 8 MB. */
    private static final int NUMBERS_MAX = 1_000_000;
    private static final int SCREENINGS_MAX = 64;

    private final Map<Key, SpotScreening> kept = new LinkedHashMap<>(16, 0.75f, true);

    private record Key(String sample, InputRevisions inputs) {
    }

    /** The screening of a sample at these revisions, made where it is not kept. */
    SpotScreening of(String sample, InputRevisions inputs, Supplier<SpotScreening> make) {
        Key key = new Key(sample, inputs);
        Optional<SpotScreening> found = find(key);
        if (found.isPresent()) {
            return found.get();
        }
        SpotScreening made = make.get();
        keep(key, made);
        return made;
    }

    private synchronized Optional<SpotScreening> find(Key key) {
        return Optional.ofNullable(kept.get(key));
    }

    private synchronized void keep(Key key, SpotScreening made) {
        kept.keySet().removeIf(other -> other.sample().equals(key.sample()));
        kept.put(key, made);
        long numbers = kept.values().stream().mapToLong(SpotScreening::size).sum();
        Iterator<SpotScreening> eldest = kept.values().iterator();
        while (kept.size() > 1 && (numbers > NUMBERS_MAX || kept.size() > SCREENINGS_MAX)) {
            numbers -= eldest.next().size();
            eldest.remove();
        }
    }
}
