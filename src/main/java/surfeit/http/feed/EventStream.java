package surfeit.http.feed;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.IteratingCallback;
import surfeit.lab.EventFilter;
import surfeit.lab.EventLog;

/**
 * One client's stream. It holds no thread and no queue, only the number of the last event the client was sent: while
 * one write is under way nothing else is made ready, and the next one takes what has come since, from the events held
 * or, where they go back not far enough, from the log. So a slow client keeps nobody waiting and misses nothing; one
 * that takes nothing at all is dropped after {@value #TAKES_NOTHING_MS} ms.
 */
final class EventStream extends IteratingCallback implements Listener {
    /** How long a stream is silent before it shows that it lives. */
    private static final long ALIVE_NANOS = TimeUnit.SECONDS.toNanos(15);
    /** Events of one write: some 50 KB. Judgement. */
    private static final int AT_ONCE = 256;
    /** How long a client may take nothing, whatever pause a body may make: some signs of life. Judgement. */
    private static final long TAKES_NOTHING_MS = 60_000;

    private final EventFeed feed;
    private final Response to;
    private final EndPoint connection;
    private final long usualIdleMs;
    private final Framing framing;
    private final EventFilter filter;
    private final BooleanSupplier allowed;
    private final long endNanos;
    private final CompletableFuture<Void> ended = new CompletableFuture<>();

    /** What comes first; where it is empty, the head of the answer goes out all the same. */
    private final byte[] opening;

    /** These are for {@link #process} and what it schedules: never two at the same time. */
    private boolean opened;
    private long position;
    private boolean over;

    private volatile long writtenNanos;
    private volatile boolean aliveDue;
    private volatile boolean leaving;
    private volatile boolean shuttingDown;

    EventStream(EventFeed feed, Response to, Framing framing, Wanted wanted, BooleanSupplier allowed) {
        this.feed = feed;
        this.to = to;
        this.connection = to.getRequest().getConnectionMetaData().getConnection().getEndPoint();
        this.usualIdleMs = connection.getIdleTimeout();
        connection.setIdleTimeout(TAKES_NOTHING_MS);
        this.framing = framing;
        this.filter = wanted.filter();
        this.allowed = allowed;
        this.writtenNanos = feed.nanoTime();
        this.endNanos = writtenNanos + wanted.most().map(most -> most.toNanos()).orElse(Long.MAX_VALUE / 2);
        EventFeed.Start start = feed.start(wanted.after());
        this.position = start.position();
        ByteArrayOutputStream first = new ByteArrayOutputStream();
        first.writeBytes(framing.opening(position));
        start.reset().ifPresent(reset -> first.writeBytes(framing.event(reset)));
        this.opening = first.toByteArray();
    }

    /** Done when the stream is over, however it ends. */
    CompletableFuture<Void> ended() {
        return ended;
    }

    @Override
    protected Action process() {
        if (!opened) {
            opened = true;
            return write(ByteBuffer.wrap(opening));
        }
        if (over || leaving && !shuttingDown) {
            return Action.SUCCEEDED;
        }
        if (shuttingDown) {
            over = true;
            return write(List.of(feed.shutdown(position)));
        }
        return events();
    }

    private Action events() {
        Optional<RecentEvents.Part> part = feed.recent().after(position, filter, AT_ONCE);
        if (part.isEmpty()) {
            feed.readLater(this::readLog);
            return Action.SCHEDULED;
        }
        position = part.get().position();
        if (!part.get().events().isEmpty()) {
            return write(part.get().events());
        }
        if (aliveDue) {
            return write(ByteBuffer.wrap(framing.alive()));
        }
        return Action.IDLE;
    }

    /** Goes on from the log; in a thread that may wait for it. */
    private void readLog() {
        try {
            EventLog.Page page = feed.log().page(filter, position, AT_ONCE);
            if (!page.range().holdsAllAfter(position)) {
                position = page.range().last();
                write(List.of(feed.reset(position, "Events were forgotten before they could be sent.")));
                return;
            }
            position = page.next();
            if (page.events().isEmpty()) {
                succeeded();
            } else {
                write(page.events().stream().map(EncodedEvent::of).toList());
            }
        } catch (RuntimeException e) {
            failed(e);
        }
    }

    private Action write(List<EncodedEvent> events) {
        if (events.size() == 1) {
            return write(events.get(0).sent(framing));
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        events.forEach(event -> bytes.writeBytes(framing.event(event)));
        return write(ByteBuffer.wrap(bytes.toByteArray()));
    }

    private Action write(ByteBuffer bytes) {
        writtenNanos = feed.nanoTime();
        aliveDue = false;
        to.write(false, bytes, this);
        return Action.SCHEDULED;
    }

    @Override
    protected void onCompleted(Throwable failure) {
        connection.setIdleTimeout(usualIdleMs);
        feed.left(this);
        ended.complete(null);
    }

    @Override
    public void wake() {
        iterate();
    }

    @Override
    public void tick(long nanoTime, boolean probing) {
        if (nanoTime - endNanos >= 0 || !allowed.getAsBoolean()) {
            leaving = true;
        } else if (probing || nanoTime - writtenNanos >= ALIVE_NANOS) {
            aliveDue = true;
        } else {
            return;
        }
        iterate();
    }

    @Override
    public void shutDown() {
        shuttingDown = true;
        iterate();
    }

    @Override
    public void breakOff() {
        connection.close();
    }
}
