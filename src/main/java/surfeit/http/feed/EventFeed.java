package surfeit.http.feed;

import java.time.Clock;
import java.time.Duration;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.eclipse.jetty.server.Response;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import surfeit.lab.EventFilter;
import surfeit.lab.EventLog;
import surfeit.lab.Store;

/**
 * Tells everybody who listens of each event, once and in the order of record. Thread-safe.
 *
 * <p>One thread is woken after commits, reads the log from where it stood, and hands on what is new, however many
 * listen. A stream keeps only its place in the log; what it cannot find among the newest events it reads for itself.
 */
public final class EventFeed implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(EventFeed.class);
    /** Newest events held in memory, some 300 bytes each. Judgement: more than come while a client takes breath. */
    private static final int HELD = 1024;
    /** Events read from the log at once, and most of one answer to a client that asks again and again. */
    private static final int AT_ONCE = 1000;
    private static final long TICK_NANOS = TimeUnit.SECONDS.toNanos(1);
    /** How often the log is looked at without being woken, in case a word was lost on the way. */
    private static final long UNASKED_NANOS = TimeUnit.SECONDS.toNanos(15);
    private static final long FORGET_NANOS = TimeUnit.HOURS.toNanos(1);
    /** Threads that read the log for clients that have fallen behind. Judgement: the rest of the service reads too. */
    private static final int READERS = 2;

    private final EventLog log;
    private final Clock clock;
    private final Duration kept;
    private final Semaphore bell = new Semaphore(0);
    private final Set<Listener> listeners = ConcurrentHashMap.newKeySet();
    private final ExecutorService readers =
        Executors.newFixedThreadPool(READERS, work -> daemon(work, "events-reader"));
    private final Thread thread = daemon(this::run, "events");
    private volatile RecentEvents recent = new RecentEvents(1, 0);
    private volatile Optional<Store.Listening> listening = Optional.empty();
    private volatile boolean closing;
    /** When the first word came that was not followed yet; 0 where there is none. */
    private final AtomicLong woken = new AtomicLong();
    private volatile int probes;
    private volatile Duration lag = Duration.ZERO;

    /** @param kept how long events stay in the log */
    public EventFeed(EventLog log, Clock clock, Duration kept) {
        this.log = log;
        this.clock = clock;
        this.kept = kept;
    }

    private static Thread daemon(Runnable work, String name) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        return thread;
    }

    /** Where a client starts, and what it is told first where that is not where it wanted to. */
    record Start(long position, Optional<EncodedEvent> reset) {
    }

    /** Begins to listen to the record. */
    public void start() {
        listening = Optional.of(log.onAppended(this::wake));
        recent = new RecentEvents(HELD, Math.max(0, log.range().last() - HELD));
        readOn();
        thread.start();
    }

    private void wake() {
        woken.compareAndSet(0, nanoTime());
        bell.release();
    }

    // Those who listen

    /**
     * Streams events to a client until it leaves or the feed is closed.
     *
     * @param allowed whether the client may listen still
     */
    public CompletableFuture<Void> stream(Wanted wanted, Framing framing, Response to, BooleanSupplier allowed) {
        EventStream stream = new EventStream(this, to, framing, wanted, allowed);
        enter(stream);
        return stream.ended();
    }

    /** The events there are after a number; or, where they cannot be told, that everything is to be read again. */
    public EventBatch read(EventFilter filter, OptionalLong after) {
        Start start = start(after);
        if (start.reset().isPresent()) {
            return new EventBatch(List.of(start.reset().get().line()), start.position());
        }
        EventLog.Page page = log.page(filter, start.position(), AT_ONCE);
        return new EventBatch(page.events().stream().map(event -> EncodedEvent.of(event).line()).toList(), page.next());
    }

    /**
     * Waits for an event after a number, then answers with what there is.
     *
     * @param answer   gives the answer
     * @param answerer where the answer may be given: it may block
     */
    public CompletableFuture<Void> await(EventFilter filter, long after, Duration most, Consumer<EventBatch> answer,
                                         Executor answerer) {
        EventWait wait = new EventWait(this, filter, after, most.toNanos());
        CompletableFuture<Void> answered = wait.over()
            .thenApplyAsync(over -> read(filter, OptionalLong.of(after)), readers)
            .thenAcceptAsync(answer, answerer).whenComplete((done, failure) -> left(wait));
        enter(wait);
        return answered;
    }

    private void enter(Listener listener) {
        listeners.add(listener);
        listener.wake();
        if (closing) {
            listener.shutDown();
        }
    }

    void left(Listener listener) {
        synchronized (listeners) {
            listeners.remove(listener);
            listeners.notifyAll();
        }
    }

    /**
     * Writes to every stream within the next seconds, so that those whose client has gone are found out. It takes two
     * writes: the first one is answered by the client's machine, the second one fails.
     */
    public void probe() {
        probes = 2;
    }

    /** How many listen. */
    public int listenerCount() {
        return listeners.size();
    }

    /** From the commit of the newest event to when it was handed to everybody who listens. */
    public Duration lag() {
        return lag;
    }

    // For those who listen

    Start start(OptionalLong after) {
        EventLog.Range range = log.range();
        if (after.isEmpty()) {
            return new Start(range.last(), Optional.empty());
        }
        long id = after.getAsLong();
        if (range.holdsAllAfter(id)) {
            return new Start(id, Optional.empty());
        }
        String why = id > range.last() ? "Event " + id + " is not on record; the newest is " + range.last() + "."
            : "Events before " + range.first() + " are forgotten; the last one seen was " + id + ".";
        return new Start(range.last(), Optional.of(reset(range.last(), why)));
    }

    EncodedEvent reset(long position, String detail) {
        return EncodedEvent.reset(position, clock.instant().truncatedTo(ChronoUnit.MILLIS), detail);
    }

    EncodedEvent shutdown(long position) {
        return EncodedEvent.shutdown(position, clock.instant().truncatedTo(ChronoUnit.MILLIS));
    }

    RecentEvents recent() {
        return recent;
    }

    EventLog log() {
        return log;
    }

    void readLater(Runnable work) {
        readers.execute(work);
    }

    long nanoTime() {
        return System.nanoTime();
    }

    // The one reader of the log

    private void run() {
        long read = nanoTime();
        long forgotten = read - FORGET_NANOS;
        long ticked = read;
        while (!closing) {
            try {
                boolean rung = bell.tryAcquire(TICK_NANOS, TimeUnit.NANOSECONDS);
                bell.drainPermits();
                long now = nanoTime();
                if (rung || now - read >= UNASKED_NANOS) {
                    readOn();
                    read = now;
                }
                if (now - forgotten >= FORGET_NANOS) {
                    forgotten = now;
                    readLater(this::forget);
                }
                if (now - ticked >= TICK_NANOS) {
                    ticked = now;
                    tick(now);
                }
            } catch (InterruptedException e) {
                return;
            } catch (RuntimeException e) {
                LOG.warn("The events could not be read and are tried again: {}", e.getClass().getName());
            }
        }
    }

    private void tick(long now) {
        boolean probing = probes > 0;
        probes = probing ? probes - 1 : 0;
        listeners.forEach(listener -> listener.tick(now, probing));
    }

    private void readOn() {
        long since = woken.getAndSet(0);
        long before = recent.last();
        EventLog.Page page;
        do {
            page = log.page(EventFilter.ALL, recent.last(), AT_ONCE);
            page.events().forEach(event -> recent.add(EncodedEvent.of(event)));
            listeners.forEach(Listener::wake); // by this thread alone: with more, all would wait for the slowest
        } while (page.events().size() == AT_ONCE);
        if (since != 0 && recent.last() > before) {
            lag = Duration.ofNanos(nanoTime() - since);
        }
    }

    private void forget() {
        try {
            log.forget(clock.instant().minus(kept));
        } catch (RuntimeException e) {
            LOG.warn("Old events could not be forgotten and are tried again: {}", e.getClass().getName());
        }
    }

    /** Tells everybody that the service stops, and waits until they have heard it, but no longer than that. */
    public void close(Duration patience) {
        closing = true;
        listening.ifPresent(Store.Listening::close);
        List.copyOf(listeners).forEach(Listener::shutDown);
        long deadline = nanoTime() + patience.toNanos();
        try {
            synchronized (listeners) {
                for (long left = patience.toNanos(); !listeners.isEmpty() && left > 0; left = deadline - nanoTime()) {
                    TimeUnit.NANOSECONDS.timedWait(listeners, left);
                }
            }
            List.copyOf(listeners).forEach(Listener::breakOff);
            bell.release();
            thread.join(Math.max(1, (deadline - nanoTime()) / 1_000_000));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        readers.shutdown();
    }

    @Override
    public void close() {
        close(Duration.ZERO);
    }
}
