package surfeit.storage;

import java.time.Instant;
import java.util.Optional;

/** The time a spot was acquired as it stands in the natural key: whole nanoseconds since 1970 UTC. */
final class AcquiredTime {
    /** Stands for "not stated", so that absent equals absent. */
    static final long ABSENT = Long.MIN_VALUE;

    private static final long NANOS = 1_000_000_000L;
    private static final Instant EARLIEST = Instant.ofEpochSecond(Long.MIN_VALUE / NANOS + 1);
    private static final Instant LATEST = Instant.ofEpochSecond(Long.MAX_VALUE / NANOS - 1);

    private AcquiredTime() {
    }

    static long of(Optional<Instant> time) {
        return time.map(AcquiredTime::nanos).orElse(ABSENT);
    }

    /** For a search: times outside what can be stored count as the first or last that can. */
    static long atLeast(Instant time) {
        return nanos(time.isBefore(EARLIEST) ? EARLIEST : time.isAfter(LATEST) ? LATEST : time);
    }

    private static long nanos(Instant time) {
        return Math.addExact(Math.multiplyExact(time.getEpochSecond(), NANOS), time.getNano());
    }
}
