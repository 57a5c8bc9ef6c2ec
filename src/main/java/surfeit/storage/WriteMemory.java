package surfeit.storage;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Supplier;
import surfeit.lab.AuditHead;
import surfeit.lab.StoredSample;
import surfeit.lab.SumsMark;
import surfeit.segregation.GroupBy;

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
    private Optional<AuditHead> auditHead = Optional.empty();

    /** What is known of one sample; what is not is asked once. */
    static final class OfSample {
        private Optional<StoredSample> present = Optional.empty();
        private OptionalLong number = OptionalLong.empty();
        private Optional<Map<GroupBy, SumsMark>> marks = Optional.empty();
        private Optional<Map<GroupBy, byte[]>> notes = Optional.empty();
        private boolean nothingFresh;

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

    void clear() {
        samples.clear();
        auditHead = Optional.empty();
    }
}
