package surfeit.http;

import java.time.Duration;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.LongSupplier;

/**
 * How many requests a token may send: on average so many a second, at most one second's worth at once. Thread-safe.
 *
 * <p>Generic cell rate algorithm (ITU-T I.371, annex A): a request that comes at t moves the time T at which the
 * allowance is used up to max(t, T) + 1 s / rate, and is refused where that lies more than 1 s ahead of t. One number a
 * token.
 */
final class Quota {
    private static final long BURST_NANOS = 1_000_000_000;

    private final long intervalNanos;
    private final LongSupplier nanoTime;
    private final Map<String, Long> usedUp = new ConcurrentHashMap<>();

    /** @param nanoTime a clock that never goes back, in nanoseconds from any start */
    Quota(int requestsPerSecond, LongSupplier nanoTime) {
        this.intervalNanos = BURST_NANOS / requestsPerSecond;
        this.nanoTime = nanoTime;
    }

    /** Takes one request from a token's allowance; how long to wait where nothing is left, else zero. */
    Duration take(String token) {
        long now = nanoTime.getAsLong();
        long[] excess = new long[1];
        usedUp.compute(token, (id, before) -> {
            long after = (before == null || before - now < 0 ? now : before) + intervalNanos;
            excess[0] = after - now - BURST_NANOS;
            return excess[0] > 0 ? before : Long.valueOf(after);
        });
        return Duration.ofNanos(Math.max(excess[0], 0));
    }
}
