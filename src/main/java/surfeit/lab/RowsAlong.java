package surfeit.lab;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.Semaphore;
import java.util.function.Consumer;
import surfeit.spot.Sample;

/**
 * Reads an upload in a thread of its own, while whoever asked for its rows deals with those read before. The sink hears
 * everything in the order of the upload and in the thread that asked. Thread-safe, as far as its reader is.
 */
final class RowsAlong implements SpotRows {
    /** Rows handed over together. Judgement: enough that waking the other thread costs little. */
    private static final int LOT = 256;
    /** Lots that may wait: enough that neither side waits for a hiccup of the other. Judgement; bounds memory. */
    private static final int LOTS_WAITING_MAX = 4;

    private final SpotRows rows;

    RowsAlong(SpotRows rows) {
        this.rows = rows;
    }

    @Override
    public void read(Upload upload, Sample sample, Sink sink) throws IOException {
        Lots lots = new Lots();
        CompletableFuture<Void> reading = CompletableFuture.runAsync(() -> lots.fill(rows, upload, sample),
            task -> new Thread(task, "surfeit-rows").start());
        try {
            lots.handOver(sink);
        } finally {
            lots.giveUp();
            reading.exceptionally(failure -> null).join(); // the upload may be closed after this
        }
        try {
            reading.join();
        } catch (CompletionException e) {
            rethrow(e);
        }
    }

    private static void rethrow(CompletionException e) throws IOException {
        if (e.getCause() instanceof IOException cause) {
            throw cause;
        }
        if (e.getCause() instanceof Error cause) {
            throw cause;
        }
        throw e.getCause() instanceof RuntimeException cause ? cause : e;
    }

    /** Nobody waits for the rows any more. */
    private static final class GivenUpException extends RuntimeException {
        GivenUpException() {
            super("Nobody waits for the rows any more.", null, false, false);
        }
    }

    /** What was read, on its way from the thread that reads to the one that asked. */
    private static final class Lots extends FoundRows {
        private final Queue<List<Consumer<Sink>>> waiting = new ConcurrentLinkedQueue<>();
        private final Semaphore room = new Semaphore(LOTS_WAITING_MAX);
        private final Semaphore ready = new Semaphore(0);
        private List<Consumer<Sink>> lot = new ArrayList<>(LOT);
        private volatile boolean givenUp;

        /** Reads to the end, or until nobody waits any more. */
        void fill(SpotRows rows, Upload upload, Sample sample) {
            try {
                rows.read(upload, sample, this);
            } catch (IOException e) {
                throw new CompletionException(e);
            } finally {
                waiting.add(lot);
                waiting.add(List.of());
                ready.release(2);
            }
        }

        /** Tells the sink everything; an empty lot is the end. */
        void handOver(Sink sink) {
            List<Consumer<Sink>> next;
            do {
                ready.acquireUninterruptibly();
                next = waiting.remove();
                room.release();
                next.forEach(found -> found.accept(sink));
            } while (!next.isEmpty());
        }

        void giveUp() {
            givenUp = true;
            room.release();
        }

        @Override
        void keep(Consumer<Sink> found) {
            if (lot.size() == LOT) {
                room.acquireUninterruptibly();
                if (givenUp) {
                    room.release();
                    throw new GivenUpException();
                }
                waiting.add(lot);
                ready.release();
                lot = new ArrayList<>(LOT);
            }
            lot.add(found);
        }
    }
}
