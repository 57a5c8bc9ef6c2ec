package surfeit.storage;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import surfeit.lab.AuditHead;
import surfeit.lab.StoredSample;
import surfeit.lab.SumsMark;
import surfeit.segregation.answer.GroupBy;

/**
 * What the one writer of a record knows of it, so that a lab that posts spot after spot to one sample need not have the
 * same rows read for each. It is true for the transaction under way; whoever takes something back, or lets another
 * program write, clears it. Not thread-safe.
 */
final class WriteMemory {
    /** Samples kept in mind. Judgement: more than are measured at the same time; some kilobytes each. */
    private static final int SAMPLES_MAX = 64;

    private final Map<String, OfSample> samples = new LinkedHashMap<>(SAMPLES_MAX, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, OfSample> eldest) {
            return size() > SAMPLES_MAX;
        }
    };
    private final Map<SpotLots.Place, Optional<SpotLots.Found>> lookedUp = new HashMap<>();
    private Optional<AuditHead> auditHead = Optional.empty();
    private OptionalLong lastImport = OptionalLong.empty();
    private OptionalLong lastSpot = OptionalLong.empty();
    private OptionalLong lastEvent = OptionalLong.empty();

    /** What is known of one sample; what is not is asked once. */
    static final class OfSample {
        private Optional<StoredSample> present = Optional.empty();
        private OptionalLong number = OptionalLong.empty();
        private Optional<Map<GroupBy, SumsMark>> marks = Optional.empty();
        private Optional<Map<GroupBy, byte[]>> notes = Optional.empty();
        private boolean nothingFresh;

        boolean isKnown() {
            return present.isPresent() && number.isPresent();
        }

        void found(StoredSample now, long key) {
            present = Optional.of(now);
            number = OptionalLong.of(key);
        }

        /** The sample as it is now; that there is none is not kept in mind. */
        Optional<StoredSample> present(Supplier<Optional<StoredSample>> ask) {
            if (present.isEmpty()) {
                present = ask.get();
            }
            return present;
        }

        /** Its key in the database. */
        long number(Supplier<Long> ask) {
            if (number.isEmpty()) {
                number = OptionalLong.of(ask.get());
            }
            return number.getAsLong();
        }

        Map<GroupBy, SumsMark> marks(Supplier<Map<GroupBy, SumsMark>> ask) {
            if (marks.isEmpty()) {
                marks = Optional.of(ask.get());
            }
            return marks.get();
        }

        Map<GroupBy, byte[]> notes(Supplier<Map<GroupBy, byte[]>> ask) {
            if (notes.isEmpty()) {
                notes = Optional.of(ask.get());
            }
            return notes.get();
        }

        void sums(Map<GroupBy, SumsMark> keptMarks, Map<GroupBy, byte[]> keptNotes) {
            marks = Optional.of(keptMarks);
            notes = Optional.of(keptNotes);
        }

        /** Its spots changed, and nothing else. */
        void changed(StoredSample now) {
            present = Optional.of(now);
        }

        /** Other sums are kept of it. */
        void otherSums() {
            marks = Optional.empty();
            notes = Optional.empty();
        }

        /** True where it is known that none of its frozen answers is up to date. */
        boolean hasNothingFresh() {
            return nothingFresh;
        }

        void nothingFresh() {
            nothingFresh = true;
        }
    }

    OfSample of(String sample) {
        return samples.computeIfAbsent(sample, name -> new OfSample());
    }

    void forget(String sample) {
        samples.remove(sample);
        lookedUp.clear();
    }

    /** The spot on record at a place, if there is one; empty where it was not looked up. */
    Optional<Optional<SpotLots.Found>> lookedUp(SpotLots.Place place) {
        return Optional.ofNullable(lookedUp.get(place));
    }

    void lookedUp(SpotLots.Place place, Optional<SpotLots.Found> found) {
        lookedUp.put(place, found);
    }

    /** A spot was recorded there. */
    void recorded(SpotLots.Place place) {
        lookedUp.remove(place);
    }

    /** What was looked up for the jobs of a commit is of no use after it. */
    void committed() {
        lookedUp.clear();
    }

    AuditHead auditHead(Supplier<AuditHead> ask) {
        if (auditHead.isEmpty()) {
            auditHead = Optional.of(ask.get());
        }
        return auditHead.get();
    }

    void auditHead(AuditHead now) {
        auditHead = Optional.of(now);
    }

    boolean knowsEnds() {
        return auditHead.isPresent() && lastImport.isPresent() && lastSpot.isPresent() && lastEvent.isPresent();
    }

    void ends(long importNumber, long spotNumber, long event, AuditHead audit) {
        lastEvent = OptionalLong.of(event);
        lastImport(importNumber);
        lastSpot(spotNumber);
        auditHead(audit);
    }

    long lastImport(LongSupplier ask) {
        lastImport = OptionalLong.of(lastImport.orElseGet(ask));
        return lastImport.getAsLong();
    }

    void lastImport(long now) {
        lastImport = OptionalLong.of(now);
    }

    long lastSpot(LongSupplier ask) {
        lastSpot = OptionalLong.of(lastSpot.orElseGet(ask));
        return lastSpot.getAsLong();
    }

    void lastSpot(long now) {
        lastSpot = OptionalLong.of(now);
    }

    /** The number of a further event. @param ask the number of the last one */
    long nextEvent(LongSupplier ask) {
        lastEvent = OptionalLong.of(lastEvent.orElseGet(ask) + 1);
        return lastEvent.getAsLong();
    }

    void clear() {
        samples.clear();
        lookedUp.clear();
        auditHead = Optional.empty();
        lastImport = OptionalLong.empty();
        lastSpot = OptionalLong.empty();
        lastEvent = OptionalLong.empty();
    }
}
