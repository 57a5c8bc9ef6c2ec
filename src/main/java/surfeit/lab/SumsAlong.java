package surfeit.lab;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.Executor;
import java.util.concurrent.Semaphore;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.GrowingSums;
import surfeit.segregation.blocks.SampleSums;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Spot;

/**
 * The sums of an upload's spots, made in a thread of their own while the upload goes on, so that its spots need not be
 * read back. Begun and ended, and given spots, by one thread; for one use.
 */
final class SumsAlong {
    /** Lots that may wait to be summed up: enough that neither side waits for a hiccup of the other. Judgement. */
    private static final int LOTS_WAITING_MAX = 8;
    /** One thread for each upload that goes on, which is not made anew for every lot. */
    private static final Executor THREADS =
        new ThreadPoolExecutor(0, Integer.MAX_VALUE, 1, TimeUnit.SECONDS, new SynchronousQueue<>(), SumsAlong::thread);

    private final Set<GroupBy> ways;
    private final GrowingSums sums;
    private final Semaphore room = new Semaphore(LOTS_WAITING_MAX);
    private CompletableFuture<Void> done = CompletableFuture.allOf();

    /**
     * @param ways the ways of grouping
     * @param sums of all spots that came before
     */
    SumsAlong(Set<GroupBy> ways, GrowingSums sums) {
        this.ways = ways;
        this.sums = sums;
    }

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "surfeit-sums");
        thread.setDaemon(true);
        return thread;
    }

    /** The ways of grouping that are summed up. */
    Set<GroupBy> ways() {
        return ways;
    }

    /** A spot and the number it was recorded under. */
    record Numbered(long number, Spot spot) {
    }

    /** Spots that were recorded next, in the order of record; waits where too many wait already. */
    void recorded(List<Numbered> spots) {
        List<Numbered> lot = List.copyOf(spots);
        room.acquireUninterruptibly();
        done = done.thenRunAsync(() -> add(lot), THREADS).whenComplete((nothing, failure) -> room.release());
    }

    private void add(List<Numbered> lot) {
        for (Numbered next : lot) {
            sums.next(next.number(), next.spot(), !next.spot().isReference());
        }
    }

    /** The sums of all spots, as {@link GrowingSums#finish}. */
    Map<GroupBy, SampleSums> finish(SpotSource source) {
        try {
            done.join();
        } catch (CompletionException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : e;
        }
        return sums.finish(source);
    }
}
