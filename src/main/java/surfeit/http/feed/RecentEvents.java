package surfeit.http.feed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.lab.EventFilter;

/**
 * The newest events, held for all who listen, so that the log is read once however many they are. Whoever has fallen
 * behind what is held reads the log by himself. Thread-safe.
 */
final class RecentEvents {
    private final EncodedEvent[] ring;
    /** Every event after this number, up to the last, is held. */
    private long base;
    private long last;
    private long count;

    /** @param last number of the newest event; those up to it are not held */
    RecentEvents(int capacity, long last) {
        this.ring = new EncodedEvent[capacity];
        this.base = last;
        this.last = last;
    }

    /**
     * Some of the events after a number.
     *
     * @param position everything up to this number was looked at
     */
    record Part(List<EncodedEvent> events, long position) {
    }

    synchronized void add(EncodedEvent event) {
        int place = place(count);
        if (count >= ring.length) {
            base = ring[place].id();
        }
        ring[place] = event;
        count++;
        last = event.id();
    }

    synchronized long last() {
        return last;
    }

    /**
     * Events after a number that match, at most so many; empty where not every event after it is held any more. One
     * question, not two: between them further events could push out those that were to be read.
     */
    synchronized Optional<Part> after(long position, EventFilter filter, int limit) {
        if (position < base) {
            return Optional.empty();
        }
        List<EncodedEvent> found = new ArrayList<>();
        long looked = position;
        for (long i = firstAfter(position); i < count && found.size() < limit; i++) {
            EncodedEvent event = ring[place(i)];
            looked = event.id();
            if (event.matches(filter)) {
                found.add(event);
            }
        }
        return Optional.of(new Part(found, looked));
    }

    /** Looked for from the newest on: whoever keeps up is behind by one. */
    private long firstAfter(long position) {
        long oldest = Math.max(0, count - ring.length);
        long first = count;
        while (first > oldest && ring[place(first - 1)].id() > position) {
            first--;
        }
        return first;
    }

    private int place(long index) {
        return (int) (index % ring.length);
    }
}
