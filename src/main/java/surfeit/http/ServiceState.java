package surfeit.http;

import java.time.Clock;
import java.time.Duration;
import surfeit.http.feed.EventFeed;
import surfeit.lab.Laboratory;

/**
 * What changes while the service runs, shared by its routes.
 *
 * @param readiness whether it takes work
 * @param feed      who listens to events
 * @param tickets   passes for event streams that were not used yet
 */
record ServiceState(Readiness readiness, EventFeed feed, EventTickets tickets) {

    /** The state of a service that has not started. */
    static ServiceState of(Laboratory laboratory, Clock clock, Duration eventsKept) {
        return new ServiceState(new Readiness(), new EventFeed(laboratory.eventLog(), clock, eventsKept),
            new EventTickets(System::nanoTime));
    }
}
