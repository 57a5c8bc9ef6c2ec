package surfeit.lab;

import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.Semaphore;
import java.util.function.Consumer;

/**
 * Many things on their way from a thread that makes them to the one that asked for them, which takes them in the order in
 * which they were made. For one use.
 */
public final class Alongside<T> {
    /** Things handed over together. Judgement: enough that waking the other thread costs little. */
    private static final int LOT = 1024;
    /** Lots that may wait: enough that neither side waits for a hiccup of the other. Judgement; bounds memory. */
    private static final int LOTS_WAITING_MAX = 4;

    private final Queue<List<T>> waiting = new ConcurrentLinkedQueue<>();
    private final Semaphore room = new Semaphore(LOTS_WAITING_MAX);
    private final Semaphore ready = new Semaphore(0);
    private List<T> lot = new ArrayList<>(LOT);
    private volatile boolean givenUp;

    private Alongside() {
    }

    /**
     * Runs the maker in a thread of its own while what it has made is taken, and ends when both are done; whichever of
     * them fails, the other one ends too and the failure is thrown.
     *
     * @param thread name of the maker's thread
     * @param maker  is given what it hands all it makes to
     */
    public static <T> void run(String thread, Consumer<Consumer<T>> maker, Consumer<T> taker) {
        Alongside<T> between = new Alongside<>();
        CompletableFuture<Void> making = CompletableFuture.runAsync(() -> between.make(maker),
            task -> new Thread(task, thread).start());
        try {
            between.takeAll(taker);
        } finally {
            between.giveUp();
            making.handle((nothing, failure) -> nothing).join();
        }
        try {
            making.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof Error error) {
                throw error;
            }
            throw e.getCause() instanceof RuntimeException cause ? cause : e;
        }
    }

    /** Nobody takes what is made any more. */
    private static final class GivenUpException extends RuntimeException {
        GivenUpException() {
            super("Nobody takes what is made any more.", null, false, false);
        }
    }

    private void make(Consumer<Consumer<T>> maker) {
        try {
            maker.accept(this::handOver);
        } finally {
            waiting.add(lot);
            waiting.add(List.of());
            ready.release(2);
        }
    }

    private void handOver(T thing) {
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
        lot.add(thing);
    }

    /** Takes all that is made; an empty lot is the end. */
    private void takeAll(Consumer<T> taker) {
        List<T> next;
        do {
            ready.acquireUninterruptibly();
            next = waiting.remove();
            room.release();
            next.forEach(taker);
        } while (!next.isEmpty());
    }

    private void giveUp() {
        givenUp = true;
        room.release();
    }
}
