package surfeit.lab;

import java.time.Instant;
import java.util.List;

/**
 * The events on record, as a log that is read from any of its numbers on. Thread-safe.
 *
 * <p>Numbers grow in the order of the commits: once an event was read, none with a lower number appears any more.
 */
public final class EventLog {
    private final Store store;

    EventLog(Store store) {
        this.store = store;
    }

    /** Numbers of the oldest and newest event kept; 0 and 0 where there is none. */
    public record Range(long first, long last) {

        /** True where everything recorded after an event is still there; 0 stands for all that is kept. */
        public boolean holdsAllAfter(long id) {
            return id <= last && (id == 0 || id >= first - 1);
        }
    }

    /**
     * Some events after one, and how far the log went when they were read.
     *
     * @param next the number to read on after: everything wanted up to it is here
     */
    public record Page(List<LabEvent> events, Range range, long next) {
        public Page {
            events = List.copyOf(events);
        }
    }

    public Range range() {
        return store.read(EventLog::range);
    }

    private static Range range(ReadAccess access) {
        return new Range(access.firstEvent(), access.lastEvent());
    }

    /** Events after one, in the order of record, at most {@code limit}. */
    public Page page(EventFilter filter, long after, int limit) {
        return store.read(access -> {
            Range range = range(access);
            List<LabEvent> events = access.events(filter, after, limit);
            long last = events.isEmpty() ? after : events.get(events.size() - 1).id();
            return new Page(events, range, events.size() < limit ? Math.max(last, range.last()) : last);
        });
    }

    /** Forgets the events before the first one that was recorded at a time or later; the newest one always stays. */
    public void forget(Instant before) {
        store.write(access -> {
            access.forgetEvents(before);
            return before;
        });
    }

    /** As {@link Store#onAppended}. */
    public Store.Listening onAppended(Runnable wake) {
        return store.onAppended(wake);
    }
}
