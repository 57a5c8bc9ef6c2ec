package surfeit.http.feed;

import java.util.concurrent.CompletableFuture;
import surfeit.lab.EventFilter;

/** A request that waits for the next event, without a thread. */
final class EventWait implements Listener {
    private final EventFeed feed;
    private final EventFilter filter;
    private final long position;
    private final long endNanos;
    private final CompletableFuture<Void> over = new CompletableFuture<>();

    /** @param position the number after which an event is waited for */
    EventWait(EventFeed feed, EventFilter filter, long position, long nanos) {
        this.feed = feed;
        this.filter = filter;
        this.position = position;
        this.endNanos = feed.nanoTime() + nanos;
    }

    /** Done when there is an event, or no time left. */
    CompletableFuture<Void> over() {
        return over;
    }

    @Override
    public void wake() {
        if (feed.recent().after(position, filter, 1).map(part -> !part.events().isEmpty()).orElse(true)) {
            over.complete(null);
        }
    }

    @Override
    public void tick(long nanoTime, boolean probing) {
        if (nanoTime - endNanos >= 0) {
            over.complete(null);
        }
    }

    @Override
    public void shutDown() {
        over.complete(null);
    }

    @Override
    public void breakOff() {
        over.complete(null);
    }
}
