package surfeit.http;

import java.time.Duration;
import java.util.concurrent.TimeUnit;

/** Whether the service takes work, and how many requests are under way. Thread-safe. */
final class Readiness {
    private boolean ended;
    private int underWay;

    synchronized boolean isReady() {
        return !ended;
    }

    /** Counts a request in; false where the service takes no more. */
    synchronized boolean begin() {
        if (ended) {
            return false;
        }
        underWay++;
        return true;
    }

    /** Counts a request out that was counted in. */
    synchronized void done() {
        underWay--;
        notifyAll();
    }

    /** Takes no more requests from now on. */
    synchronized void end() {
        ended = true;
    }

    /** Waits until the requests under way are answered, but no longer than that. */
    synchronized void awaitDone(Duration patience) {
        long deadline = System.nanoTime() + patience.toNanos();
        try {
            for (long left = patience.toNanos(); underWay > 0 && left > 0; left = deadline - System.nanoTime()) {
                TimeUnit.NANOSECONDS.timedWait(this, left);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
