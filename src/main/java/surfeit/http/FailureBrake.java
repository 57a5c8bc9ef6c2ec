package surfeit.http;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongSupplier;

/**
 * Slows down whoever shows one wrong token after another: the answer is held back, longer each time. Thread-safe.
 *
 * <p>A valid token is never held back, so that a forgotten dashboard with an old token does not lock out the
 * workstation beside it; tokens hold 256 random bits, and no rate of guessing finds one.
 */
final class FailureBrake {
    /** Failures that are answered at once. Judgement: somebody mistyping. */
    static final int FREE = 5;
    private static final long FIRST_MILLIS = 100;
    /** Longest hold, in milliseconds. Judgement: a person still waits, a program does not get on. */
    static final long LONGEST_MILLIS = 2_000;
    /** A machine that failed last this long ago starts anew, in nanoseconds. */
    private static final long FORGOTTEN_NANOS = 15L * 60 * 1_000_000_000;
    /** Machines remembered; the one that failed longest ago makes room. About a mebibyte. */
    static final int MACHINES_MAX = 10_000;
    /** Answers held back at the same time, over all machines; each holds a connection. */
    static final int HELD_MAX = 256;

    private record Failures(int count, long last) {
    }

    private final LongSupplier nanoTime;
    private final Map<String, Failures> byMachine = new LinkedHashMap<>(64, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Failures> eldest) {
            return size() > MACHINES_MAX;
        }
    };
    private int held;

    /** @param nanoTime a clock that never goes back, in nanoseconds from any start */
    FailureBrake(LongSupplier nanoTime) {
        this.nanoTime = nanoTime;
    }

    /** Notes a failure. @return how many there were in a row */
    synchronized int fail(String machine) {
        long now = nanoTime.getAsLong();
        Failures before = byMachine.get(machine);
        int count = before == null || now - before.last() > FORGOTTEN_NANOS ? 1
            : Math.min(before.count() + 1, Integer.MAX_VALUE - 1);
        byMachine.put(machine, new Failures(count, now));
        return count;
    }

    /** How long to hold the answer to the failure with this number in a row. */
    static Duration hold(int count) {
        if (count <= FREE) {
            return Duration.ZERO;
        }
        int doublings = Math.min(count - FREE - 1, 10);
        return Duration.ofMillis(Math.min(FIRST_MILLIS << doublings, LONGEST_MILLIS));
    }

    /** Reserves a place among the answers held back; false where all are taken. */
    synchronized boolean enter() {
        if (held >= HELD_MAX) {
            return false;
        }
        held++;
        return true;
    }

    synchronized void leave() {
        held--;
    }

    synchronized int machinesKnown() {
        return byMachine.size();
    }
}
