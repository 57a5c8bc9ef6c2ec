package surfeit.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The program as a process of its own, from the jar where it was made, else from the classes. */
final class ServiceProcess implements AutoCloseable {
    private static final Path JAR = Path.of("target", "surfeit.jar");
    private static final String READY = "listening on ";

    private final Process process;
    private final URI address;
    private final double startMs;
    private final HttpClient client = HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    private ServiceProcess(Process process, URI address, double startMs) {
        this.process = process;
        this.address = address;
        this.startMs = startMs;
    }

    static boolean hasJar() {
        return Files.exists(JAR);
    }

    /** Starts {@code serve} on a free port and waits for its first answer. */
    static ServiceProcess start(Path data, List<String> javaOptions) throws IOException {
        List<String> command = new ArrayList<>(List.of(ProcessHandle.current().info().command().orElseThrow()));
        command.addAll(javaOptions);
        command.addAll(hasJar() ? List.of("-jar", JAR.toString())
            : List.of("-cp", System.getProperty("java.class.path"), "surfeit.cli.Main"));
        command.addAll(List.of("serve", "--port", "0", "--data", data.toString()));
        long start = System.nanoTime();
        Process process = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
        BufferedReader said = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        String line = said.readLine();
        while (line != null && !line.startsWith(READY)) {
            line = said.readLine();
        }
        if (line == null) {
            throw new IOException("The program ended before it listened.");
        }
        URI address = URI.create(line.substring(READY.length()));
        try (var answer = address.resolve("/readyz").toURL().openStream()) {
            answer.readAllBytes();
        }
        return new ServiceProcess(process, address, (System.nanoTime() - start) / 1e6);
    }

    /** From the start of the process to its first answer, the record open. */
    double startMs() {
        return startMs;
    }

    void put(String path, String json) throws IOException, InterruptedException {
        send(HttpRequest.newBuilder(address.resolve(path)).header("Content-Type", "application/json")
            .PUT(HttpRequest.BodyPublishers.ofString(json)));
    }

    String post(String path, String mediaType, Path file) throws IOException, InterruptedException {
        return send(HttpRequest.newBuilder(address.resolve(path)).header("Content-Type", mediaType)
            .POST(HttpRequest.BodyPublishers.ofFile(file)));
    }

    private String send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString()).body();
    }

    /** Most memory it ever had in the machine's own memory, as Linux counts it; 0 elsewhere. */
    double peakMegabytes() throws IOException {
        return status("VmHWM:");
    }

    /** Memory it has in the machine's own memory, as Linux counts it; 0 elsewhere. */
    double residentMegabytes() throws IOException {
        return status("VmRSS:");
    }

    private double status(String key) throws IOException {
        Path status = Path.of("/proc", Long.toString(process.pid()), "status");
        return !Files.exists(status) ? 0 : Files.readAllLines(status).stream().filter(line -> line.startsWith(key))
            .mapToDouble(line -> Double.parseDouble(line.replaceAll("[^0-9]", "")) / 1024).findFirst().orElse(0);
    }

    @Override
    public void close() {
        process.destroy();
        try {
            process.waitFor();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
