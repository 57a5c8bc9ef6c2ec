package surfeit.http;

import java.time.Clock;
import java.time.Duration;
import surfeit.http.feed.EventFeed;
import surfeit.http.measure.Measures;
import surfeit.lab.Laboratory;

/**
 * What changes while the service runs, shared by its routes.
 *
 * @param readiness whether it takes work
 * @param feed      who listens to events
 * @param tickets   passes for event streams that were not used yet
 * @param uploads   uploads that somebody may ask after
 * @param measures  what it counts of itself
 */
record ServiceState(Readiness readiness, EventFeed feed, EventTickets tickets, NamedUploads uploads, Measures measures) {

    /** The state of a service that has not started. */
    static ServiceState of(Laboratory laboratory, Clock clock, Duration eventsKept) {
        EventFeed feed = new EventFeed(laboratory.eventLog(), clock, eventsKept);
        return new ServiceState(new Readiness(), feed, new EventTickets(System::nanoTime), new NamedUploads(),
            new Measures(laboratory, feed, ProgramVersion.VERSION));
    }
}
