package surfeit.lab;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.Predicate;
import surfeit.composition.Nominal;
import surfeit.segregation.screening.ScreenedSpots;
import surfeit.segregation.screening.SpotScreening;

/**
 * What each spot on record shows by itself: a screening, no verdicts. Withdrawn spots and reference spots are left out.
 * Thread-safe.
 *
 * <p>The first reading of a sample at its present revision reads all of its spots, twice; further ones read only what
 * they hand over. Memory grows with groups and particles, not with the spots.
 */
public final class Readings {
    /** Spots read in one piece, at first and at most; bounds the memory, not the list. */
    private static final int FIRST_LOT = 64;
    private static final int LOT_MAX = 1024;

    private final Store store;
    private final Answers answers;
    private final Screenings screenings = new Screenings();

    Readings(Store store, Answers answers) {
        this.store = store;
        this.answers = answers;
    }

    /** A sample with what it is compared with, as one moment saw them. */
    private record Compared(StoredSample sample, Nominal nominal, InputRevisions inputs) {
    }

    /** All readings of a sample in the order of record. @throws ProblemException too-few-elements */
    public void forEach(String sample, Consumer<StoredReading> consumer) {
        forEach(sample, 0, reading -> {
            consumer.accept(reading);
            return true;
        });
    }

    /**
     * Readings of a sample in the order of record, as they are when the first is read.
     *
     * @param after number of the spot to begin after; 0 for the first one
     * @param taken takes a reading; false where it was the last one wanted
     * @return false where {@code taken} wanted no more
     * @throws ProblemException too-few-elements
     */
    public boolean forEach(String sample, long after, Predicate<StoredReading> taken) {
        return screen(store.read(access -> compared(access, Lookups.sample(access, sample))), after, taken);
    }

    /** The same for a sample as it is, or was at a revision. */
    public boolean forEach(StoredSample sample, long after, Predicate<StoredReading> taken) {
        return screen(store.read(access -> compared(access, sample)), after, taken);
    }

    private Compared compared(ReadAccess access, StoredSample sample) {
        return new Compared(sample, answers.nominal(access, sample), answers.inputRevisions(access, sample));
    }

    private boolean screen(Compared compared, long after, Predicate<StoredReading> taken) {
        StoredSample stored = compared.sample();
        SpotScreening screening = screenings.of(stored.name(), compared.inputs(), () -> answers.screening(stored,
            compared.nominal(), new RecordedSpots(spots -> forEachSpot(stored, 0, spot -> {
                spots.accept(spot);
                return true;
            }), store::numbersAside)));
        ScreenedSpots spots = screening.spots();
        return forEachSpot(stored, after, spot -> spot.spot().isReference()
            || taken.test(new StoredReading(spot, spots.read(spot.spot()))));
    }

    private boolean forEachSpot(StoredSample stored, long after, Predicate<StoredSpot> taken) {
        long from = after;
        for (int lot = FIRST_LOT; ; lot = Math.min(2 * lot, LOT_MAX)) {
            long begin = from;
            int limit = lot;
            List<StoredSpot> spots = store.read(access -> access.spots(stored, SpotFilter.ALL, begin, limit));
            for (StoredSpot spot : spots) {
                if (!taken.test(spot)) {
                    return false;
                }
            }
            if (spots.size() < limit) {
                return true;
            }
            from = Lookups.spotNumber(spots.get(limit - 1).id());
        }
    }
}
