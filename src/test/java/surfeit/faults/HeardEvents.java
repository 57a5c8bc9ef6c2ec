package surfeit.faults;

import java.io.IOException;
import java.io.InputStream;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** What a client hears that streams all events from the first one on, as lines of JSON. Thread-safe. */
final class HeardEvents implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(60);

    /** Kept: a client that nobody holds any more breaks off the streams it opened. */
    private static final HttpClient CLIENT = HttpClient.newHttpClient();

    private final InputStream stream;
    private final List<Long> ids = new ArrayList<>();

    private HeardEvents(InputStream stream) {
        this.stream = stream;
        Thread reader = new Thread(this::read, "heard events");
        reader.setDaemon(true);
        reader.start();
    }

    static HeardEvents of(RunningProgram program) throws InterruptedException, ExecutionException, TimeoutException {
        HttpRequest request = HttpRequest.newBuilder(program.address().resolve("/v1/events?after=0"))
            .header("Accept", "application/x-ndjson").build();
        return new HeardEvents(CLIENT.sendAsync(request, HttpResponse.BodyHandlers.ofInputStream())
            .get(PATIENCE.toSeconds(), TimeUnit.SECONDS).body());
    }

    private void read() {
        StringBuilder line = new StringBuilder();
        try {
            for (int next = stream.read(); next >= 0; next = stream.read()) {
                if (next != '\n') {
                    line.append((char) next);
                } else if (!line.toString().isBlank()) {
                    enter(RecordedSpots.parse(line.toString()).path("id").asLong());
                    line.setLength(0);
                }
            }
        } catch (IOException e) {
            enter(-1);
        }
    }

    private synchronized void enter(long id) {
        if (id != 0) {
            ids.add(id);
        }
        notifyAll();
    }

    /** Numbers of the events in the order they were heard of; -1 where the stream broke. */
    synchronized List<Long> ids() {
        return List.copyOf(ids);
    }

    /** Waits until so many were heard of. */
    synchronized void await(int count) throws InterruptedException {
        long deadline = System.nanoTime() + PATIENCE.toNanos();
        while (ids.size() < count) {
            long left = deadline - System.nanoTime();
            if (left <= 0) {
                throw new AssertionError("expected " + count + " events, heard of " + ids);
            }
            TimeUnit.NANOSECONDS.timedWait(this, left);
        }
    }

    @Override
    public void close() throws IOException {
        stream.close();
    }
}
