package surfeit.http.feed;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import surfeit.lab.EventFilter;
import surfeit.lab.LabEvent;

/** The newest events, for those who follow closely; whoever does not must be told so. Invented events. */
class RecentEventsTest {
    private static final int MANY = 100_000;

    private static EncodedEvent event(long id) {
        return EncodedEvent.of(new LabEvent(id, LabEvent.Type.SAMPLE_CHANGED, Instant.EPOCH, Optional.of("lot"),
            Optional.empty(), OptionalLong.empty()));
    }

    @Test
    void what_was_pushed_out_is_not_passed_over() {
        RecentEvents recent = new RecentEvents(4, 0);
        LongStream.rangeClosed(1, 10).forEach(id -> recent.add(event(id)));

        assertThat(recent.after(5, EventFilter.ALL, 100)).isEmpty();
        RecentEvents.Part part = recent.after(6, EventFilter.ALL, 100).orElseThrow();
        assertThat(part.events()).extracting(EncodedEvent::id).containsExactly(7L, 8L, 9L, 10L);
        assertThat(part.position()).isEqualTo(10);
        assertThat(recent.after(10, EventFilter.ALL, 100).orElseThrow().events()).isEmpty();
    }

    @Test
    void a_reader_beside_the_writer_sees_every_event_or_is_told_that_it_is_behind() throws InterruptedException {
        RecentEvents recent = new RecentEvents(8, 0);
        List<EncodedEvent> all = LongStream.rangeClosed(1, MANY).mapToObj(RecentEventsTest::event).toList();
        Thread writer = new Thread(() -> all.forEach(recent::add));
        writer.start();
        long position = 0;
        long gaps = 0;
        while (position < MANY) {
            Optional<RecentEvents.Part> part = recent.after(position, EventFilter.ALL, 8);
            if (part.isEmpty()) {
                position = recent.last(); // goes on from the log, in the feed
                continue;
            }
            for (EncodedEvent event : part.get().events()) {
                gaps += event.id() - position - 1;
                position = event.id();
            }
        }
        writer.join();
        assertThat(gaps).isZero();
    }
}
