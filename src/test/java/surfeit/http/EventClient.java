package surfeit.http;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/**
 * Reads an event stream as a browser does: blocks of fields with an empty line between (WHATWG HTML, section 9.2.6).
 */
final class EventClient implements AutoCloseable {
    private static final Map<String, String> END = Map.of("end", "");
    /** Kept: a client that nobody holds any more breaks off the streams it opened. */
    private static final HttpClient CLIENT = HttpClient.newHttpClient();

    private final HttpResponse<InputStream> response;
    private final BlockingQueue<Map<String, String>> blocks = new LinkedBlockingQueue<>();

    private EventClient(HttpResponse<InputStream> response, boolean lines) {
        this.response = response;
        Thread reader = new Thread(() -> read(lines), "event client");
        reader.setDaemon(true);
        reader.start();
    }

    static EventClient open(RunningService service, String query, String... headers) {
        return open(service, "text/event-stream", query, headers);
    }

    static EventClient lines(RunningService service, String query, String... headers) {
        return open(service, "application/x-ndjson", query, headers);
    }

    private static EventClient open(RunningService service, String accept, String query, String... headers) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(service.server().address() + "/v1/events"
            + query))
            .header("Accept", accept);
        if (headers.length > 0) {
            request.headers(headers);
        }
        try {
            return new EventClient(CLIENT.send(request.build(),
                HttpResponse.BodyHandlers.ofInputStream()), accept.endsWith("ndjson"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    HttpResponse<InputStream> response() {
        return response;
    }

    private void read(boolean lines) {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(response.body(), StandardCharsets.UTF_8))) {
            Map<String, String> block = new LinkedHashMap<>();
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                if (lines) {
                    blocks.add(Map.of("data", line));
                } else if (line.isEmpty()) {
                    blocks.add(block);
                    block = new LinkedHashMap<>();
                } else {
                    int colon = line.indexOf(':');
                    block.put(line.substring(0, colon), line.substring(colon + 1).strip());
                }
            }
        } catch (IOException e) {
            blocks.add(Map.of("failure", String.valueOf(e.getMessage())));
        }
        blocks.add(END);
    }

    /** The next block or line; empty where none comes in time. */
    Optional<Map<String, String>> next(long seconds) {
        try {
            return Optional.ofNullable(blocks.poll(seconds, TimeUnit.SECONDS));
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    Map<String, String> next() {
        return next(10).orElseThrow(() -> new AssertionError("No block came within 10 s."));
    }

    boolean hasEnded() {
        return next().equals(END);
    }

    @Override
    public void close() {
        try {
            response.body().close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
