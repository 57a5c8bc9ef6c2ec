package surfeit.bench;

import io.javalin.Javalin;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Comparator;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import surfeit.composition.AlloyCatalogue;
import surfeit.http.Server;
import surfeit.http.ServerSettings;
import surfeit.lab.Laboratory;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.MethodSettings;
import surfeit.storage.SqliteStore;

/** The whole service on a free port with a record of its own. Numbers are invented. */
final class BenchService implements AutoCloseable {
    static final String SAMPLE = "{\"nominal\": {\"unit\": \"at%\", \"elements\": {\"Ag\": 60.1, \"Cu\": 39.9}}}";

    private final Path folder;
    private final SqliteStore store;
    private final Laboratory laboratory;
    private final Server server;
    private final HttpClient client = HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    BenchService() {
        try {
            folder = Files.createTempDirectory("surfeit-bench-");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        store = SqliteStore.open(folder);
        laboratory = new Laboratory(store, AlloyCatalogue.packaged(), new Interpreter(),
            MethodSettings.DEFAULT_DETECTION_LIMIT_MASS_FRACTION);
        server = Server.start(ServerSettings.DEFAULT.withPort(0), laboratory, Clock.systemUTC());
    }

    int port() {
        return server.port();
    }

    Laboratory laboratory() {
        return laboratory;
    }

    SqliteStore store() {
        return store;
    }

    Path folder() {
        return folder;
    }

    void put(String path, String json) {
        send(HttpRequest.newBuilder(URI.create(server.address() + path)).header("Content-Type", "application/json")
            .PUT(HttpRequest.BodyPublishers.ofString(json)));
    }

    String post(String path, String mediaType, byte[] body) {
        return send(HttpRequest.newBuilder(URI.create(server.address() + path)).header("Content-Type", mediaType)
            .POST(HttpRequest.BodyPublishers.ofByteArray(body))).body();
    }

    HttpResponse<String> get(String path) {
        return send(HttpRequest.newBuilder(URI.create(server.address() + path)));
    }

    private HttpResponse<String> send(HttpRequest.Builder request) {
        try {
            HttpResponse<String> response = client.send(request.build(), HttpResponse.BodyHandlers.ofString());
            if (response.statusCode() >= 400) {
                throw new IllegalStateException(response.statusCode() + " " + response.body());
            }
            return response;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** A table of spots of a binary on so many particles, with labels that begin alike. */
    static byte[] table(String labels, int spots, int particles) {
        Random random = new Random(20261124);
        StringBuilder table = new StringBuilder(spots * 40).append("label,feature,particle,Ag at%,Cu at%\n");
        for (int i = 0; i < spots; i++) {
            double silver = 60 + random.nextGaussian();
            table.append(String.format(Locale.ROOT, "%s%d,matrix,P%d,%.2f,%.2f\n", labels, i, i % particles, silver,
                100 - silver));
        }
        return table.toString().getBytes(java.nio.charset.StandardCharsets.US_ASCII);
    }

    /**
     * A server that answers {@code /fixed} with the same bytes always; at {@code /echo} it reads the JSON it is sent and
     * writes one JSON document, both through Jackson, and does nothing between.
     */
    static Javalin bareServer(byte[] fixed, String document) throws IOException {
        com.fasterxml.jackson.databind.ObjectMapper json = new com.fasterxml.jackson.databind.ObjectMapper();
        com.fasterxml.jackson.databind.JsonNode answer = json.readTree(document);
        Javalin bare = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            config.startup.showOldJavalinVersionWarning = false;
            config.routes.get("/fixed", context -> context.contentType("application/json").result(fixed));
            config.routes.post("/echo", context -> {
                json.readTree(context.bodyAsBytes());
                byte[] bytes = json.writeValueAsBytes(answer);
                context.res().setContentType("application/json");
                context.res().setContentLength(bytes.length);
                context.res().getOutputStream().write(bytes);
            });
        });
        return bare.start("127.0.0.1", 0);
    }

    @Override
    public void close() {
        server.close();
        store.close();
        try (Stream<Path> files = Files.walk(folder)) {
            files.sorted(Comparator.reverseOrder()).forEach(file -> file.toFile().delete());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
