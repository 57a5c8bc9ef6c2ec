package surfeit.http;

import java.time.Clock;
import surfeit.http.feed.EventFeed;
import surfeit.http.measure.Measures;
import surfeit.lab.Laboratory;
import surfeit.lab.SharedTickets;

/**
 * What changes while the service runs, shared by its routes.
 *
 * @param readiness whether it takes work
 * @param feed      who listens to events
 * @param tickets   passes for event streams that were not used yet
 * @param uploads   uploads that somebody may ask after
 * @param measures  what it counts of itself
 */
record ServiceState(Readiness readiness, EventFeed feed, Tickets tickets, NamedUploads uploads, Measures measures) {

    /** The state of a service that has not started. */
    static ServiceState of(Laboratory laboratory, Clock clock, ServerSettings settings) {
        Tickets tickets = laboratory.access().sharedTickets().map((SharedTickets shared) -> (Tickets)
            new SharedEventTickets(shared, laboratory.access(), clock, settings.access().noAuth()))
            .orElseGet(() -> new EventTickets(System::nanoTime));
        EventFeed feed = new EventFeed(laboratory.eventLog(), clock, settings.eventsKept());
        return new ServiceState(new Readiness(), feed, tickets, new NamedUploads(),
            new Measures(laboratory, feed, ProgramVersion.VERSION));
    }
}
