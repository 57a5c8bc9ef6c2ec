package surfeit.http;

import java.time.Clock;
import surfeit.http.feed.EventFeed;
import surfeit.lab.Laboratory;
import surfeit.lab.SharedTickets;

/**
 * What changes while the service runs, shared by its routes.
 *
 * @param readiness whether it takes work
 * @param feed      who listens to events
 * @param tickets   passes for event streams that were not used yet
 */
record ServiceState(Readiness readiness, EventFeed feed, Tickets tickets) {

    /** The state of a service that has not started. */
    static ServiceState of(Laboratory laboratory, Clock clock, ServerSettings settings) {
        Tickets tickets = laboratory.access().sharedTickets().map((SharedTickets shared) -> (Tickets)
            new SharedEventTickets(shared, laboratory.access(), clock, settings.access().noAuth()))
            .orElseGet(() -> new EventTickets(System::nanoTime));
        return new ServiceState(new Readiness(), new EventFeed(laboratory.eventLog(), clock, settings.eventsKept()),
            tickets);
    }
}
