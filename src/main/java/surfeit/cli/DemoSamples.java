package surfeit.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import surfeit.http.json.RequestParts;

/** Loads the packaged invented samples into a running service, the way a workstation's script would. */
final class DemoSamples {
    private static final List<String> TABLES = List.of("ag-cu-braze-powder", "ag-cu-braze-powder-etched", "sn-bi-solder-spheres");
    private static final List<String> DOCUMENTS = List.of("al-si-powder", "al-si-patch-oil");

    private final HttpClient client = HttpClient.newHttpClient();
    private final String address;

    DemoSamples(String address) {
        this.address = address;
    }

    void load() throws IOException, InterruptedException {
        for (String name : TABLES) {
            send("PUT", "/v1/samples/" + name, "application/json", packaged(name + ".sample.json"));
            send("POST", "/v1/samples/" + name + "/spots", "text/csv", packaged(name + ".csv"));
        }
        for (String name : DOCUMENTS) {
            RequestParts parts = RequestParts.of(packaged(name + ".json"));
            send("PUT", "/v1/samples/" + name, "application/json", parts.sample());
            send("POST", "/v1/samples/" + name + "/spots", "application/json", parts.spots());
        }
    }

    private void send(String method, String path, String mediaType, byte[] body) throws IOException, InterruptedException {
        HttpResponse<String> answer = client.send(HttpRequest.newBuilder(URI.create(address + path))
            .header("Content-Type", mediaType).method(method, HttpRequest.BodyPublishers.ofByteArray(body)).build(),
            HttpResponse.BodyHandlers.ofString());
        if (answer.statusCode() >= 300) {
            throw new IllegalStateException("The demonstration data were refused: " + answer.body());
        }
    }

    private static byte[] packaged(String name) throws IOException {
        try (InputStream in = DemoSamples.class.getResourceAsStream("/sample-spectra-results/" + name)) {
            if (in == null) {
                throw new IllegalStateException("The program's jar lacks sample-spectra-results/" + name + ".");
            }
            return in.readAllBytes();
        }
    }

    /** Removes the demonstration's folder with all in it. */
    static void remove(Path folder) {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path path : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("The demonstration's folder " + folder + " could not be removed.", e);
        }
    }
}
