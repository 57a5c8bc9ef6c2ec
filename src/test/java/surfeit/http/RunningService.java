package surfeit.http;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import surfeit.composition.AlloyCatalogue;
import surfeit.lab.Laboratory;
import surfeit.lab.Occasion;
import surfeit.lab.TokenRequest;
import surfeit.lab.TokenScope;
import surfeit.lab.TokenSecret;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.MethodSettings;
import surfeit.storage.RecordEngine;
import surfeit.storage.RecordStore;

/** The whole service on a free port with a record of its own; every answer is held against the OpenAPI document. */
final class RunningService implements AutoCloseable {
    static final Instant NOW = Instant.parse("2026-11-24T08:30:00Z");
    private static final Random RANDOM = new Random(20261124);

    private final Path folder;
    private final RecordStore store;
    private final Laboratory laboratory;
    private final Server server;
    private final HttpClient client = HttpClient.newHttpClient();

    private RunningService(RecordEngine engine, Path folder, ServerSettings settings, int port) {
        this(engine.open(folder), folder, settings, port);
    }

    private RunningService(RecordStore store, Path folder, ServerSettings settings, int port) {
        this.folder = folder;
        this.store = store;
        laboratory = new Laboratory(store, AlloyCatalogue.packaged(), new Interpreter(),
            MethodSettings.DEFAULT_DETECTION_LIMIT_MASS_FRACTION);
        server = Server.start(settings.withPort(port), laboratory, Clock.fixed(NOW, ZoneOffset.UTC));
    }

    static RunningService start() {
        return start(RecordEngine.SQLITE);
    }

    static RunningService start(ServerSettings settings) {
        return start(RecordEngine.SQLITE, settings);
    }

    static RunningService start(RecordEngine engine) {
        return start(engine, ServerSettings.DEFAULT);
    }

    static RunningService start(RecordEngine engine, ServerSettings settings) {
        return new RunningService(engine, freshFolder(), settings, 0);
    }

    /** Where no more writes may wait than these. */
    static RunningService start(RecordEngine engine, int writesWaitingMax, ServerSettings settings) {
        Path folder = freshFolder();
        return new RunningService(engine.open(folder, writesWaitingMax), folder, settings, 0);
    }

    /** On a port where another one was before. */
    static RunningService startAgainAt(String address) {
        return new RunningService(RecordEngine.SQLITE, freshFolder(), ServerSettings.DEFAULT,
            URI.create(address).getPort());
    }

    /** A further service on the same record, where the engine allows that. */
    static RunningService beside(RunningService other, RecordEngine engine) {
        return new RunningService(engine, other.folder, ServerSettings.DEFAULT, 0);
    }

    private static Path freshFolder() {
        try {
            return Files.createTempDirectory("surfeit-test-");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The route table of a service on this record that has not started. */
    static RouteTable routes(Laboratory laboratory) {
        return Routes.of(laboratory, state(laboratory));
    }

    /** The state of a service on this record that has not started. */
    static ServiceState state(Laboratory laboratory) {
        return ServiceState.of(laboratory, Clock.fixed(NOW, ZoneOffset.UTC), ServerSettings.DEFAULT);
    }

    /** Makes a token; from the first one on the service asks for tokens. */
    String token(String name, TokenScope... scopes) {
        byte[] random = new byte[TokenSecret.RANDOM_BYTES];
        RANDOM.nextBytes(random);
        return laboratory.access().issue(new TokenRequest(name, Set.of(scopes), Optional.empty()), random,
            new Occasion("test", NOW)).secret();
    }

    /** The header field that shows a token. */
    static String[] bearer(String token) {
        return new String[] {"Authorization", "Bearer " + token};
    }

    Laboratory laboratory() {
        return laboratory;
    }

    RecordStore store() {
        return store;
    }

    Server server() {
        return server;
    }

    Path folder() {
        return folder;
    }

    Reply get(String address, String... headers) {
        return send("GET", address, new byte[0], headers);
    }

    Reply put(String address, String json, String... headers) {
        return send("PUT", address, json.getBytes(StandardCharsets.UTF_8),
            with(headers, "Content-Type", "application/json"));
    }

    Reply post(String address, String mediaType, String body, String... headers) {
        return send("POST", address, body.getBytes(StandardCharsets.UTF_8), with(headers, "Content-Type", mediaType));
    }

    Reply post(String address, String json) {
        return post(address, "application/json", json);
    }

    Reply send(String method, String address, byte[] body, String... headers) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(server.address() + address))
            .method(method, body.length == 0 && !method.equals("POST") && !method.equals("PUT")
                ? HttpRequest.BodyPublishers.noBody() : HttpRequest.BodyPublishers.ofByteArray(body));
        if (headers.length > 0) {
            request.headers(headers);
        }
        try {
            HttpResponse<byte[]> response = client.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
            Reply reply = new Reply(response.statusCode(), response.headers(), response.body());
            AnswerCheck.check(method, URI.create(address).getRawPath(), reply);
            return reply;
        } catch (IOException e) {
            throw new UncheckedIOException(method + " " + address, e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    static byte[] gzip(byte[] bytes) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            gzip.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static String[] with(String[] headers, String name, String value) {
        return Stream.concat(Stream.of(name, value), Stream.of(headers)).toArray(String[]::new);
    }

    @Override
    public void close() {
        server.close();
        store.close();
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            files.sorted(Comparator.reverseOrder()).forEach(file -> file.toFile().delete());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
