package surfeit.http;

/**
 * How long one reading of an upload may wait for what is still to arrive of it: a tenth of a second, and a quarter of the
 * time it had without waiting. Who reads holds the record's one writer, and so a connection holds up the others by that at
 * most. Not thread-safe.
 */
final class Patience {
    /** Judgement: nobody notices a wait as long as this, and a network of 100 Mbit/s brings a mebibyte in it. */
    static final long FIRST_NANOS = 100_000_000;
    /** Judgement: a connection nearly as fast as the record is worth waiting for. */
    private static final int PART = 4;

    private final long start = System.nanoTime();
    private final long firstNanos;
    private long waitedNanos;

    Patience() {
        this(FIRST_NANOS);
    }

    /** @param firstNanos what may be waited at once */
    Patience(long firstNanos) {
        this.firstNanos = firstNanos;
    }

    /** How much longer may be waited now, in nanoseconds; zero or less where no longer. */
    long leftNanos() {
        long worked = System.nanoTime() - start - waitedNanos;
        return firstNanos + worked / PART - waitedNanos;
    }

    void waited(long nanos) {
        waitedNanos += nanos;
    }
}
