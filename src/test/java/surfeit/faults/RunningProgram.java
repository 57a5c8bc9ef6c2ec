package surfeit.faults;

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
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** The program itself, as a process of its own on a data folder: it can be told to stop, and it can be killed. */
final class RunningProgram implements AutoCloseable {
    private static final String READY = "listening on ";
    private static final Duration PATIENCE = Duration.ofSeconds(60);

    private final Process process;
    private final Path log;
    private final Optional<URI> address;
    private final HttpClient client = HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    private RunningProgram(Process process, Path log, Optional<URI> address) {
        this.process = process;
        this.log = log;
        this.address = address;
    }

    /** Starts {@code serve} on a free port and waits until it listens, or has ended instead. */
    static RunningProgram serve(Path data, String... javaOptions) throws IOException {
        Path log = Files.createTempFile("surfeit-log-", ".txt");
        return waitFor(launch(data, log, javaOptions), log);
    }

    /** The same on a database, whose password comes by the environment. */
    static RunningProgram serve(String databaseUrl, String user, String password, String... javaOptions)
        throws IOException {
        Path log = Files.createTempFile("surfeit-log-", ".txt");
        ProcessBuilder program = program(log, List.of("--database-url", databaseUrl, "--database-user", user), javaOptions);
        program.environment().put("SURFEIT_DATABASE_PASSWORD", password);
        return waitFor(program.start(), log);
    }

    private static RunningProgram waitFor(Process process, Path log) throws IOException {
        BufferedReader said = new BufferedReader(new InputStreamReader(process.getInputStream(),
            StandardCharsets.UTF_8));
        Optional<URI> address = Optional.empty();
        while (address.isEmpty()) {
            String line = said.readLine();
            if (line == null) {
                break;
            }
            if (line.startsWith(READY)) {
                address = Optional.of(URI.create(line.substring(READY.length())));
            }
        }
        return new RunningProgram(process, log, address);
    }

    /** Starts {@code serve} and does not wait for anything. */
    static Process launch(Path data, Path log, String... javaOptions) throws IOException {
        return program(log, List.of("--data", data.toString()), javaOptions).start();
    }

    private static ProcessBuilder program(Path log, List<String> place, String... javaOptions) {
        List<String> command = new ArrayList<>(List.of(ProcessHandle.current().info().command().orElseThrow(),
            "-Xmx256m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"));
        command.addAll(List.of(javaOptions));
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), "surfeit.cli.Main", "serve", "--port", "0"));
        command.addAll(place);
        return new ProcessBuilder(command).redirectError(log.toFile());
    }

    boolean isListening() {
        return address.isPresent();
    }

    URI address() {
        return address.orElseThrow(() -> new IllegalStateException("The program does not listen: " + log()));
    }

    /** What it wrote to standard error so far. */
    String log() {
        try {
            return Files.readString(log);
        } catch (IOException e) {
            return e.toString();
        }
    }

    HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return send(HttpRequest.newBuilder(address().resolve(path)));
    }

    HttpResponse<String> put(String path, String json) throws IOException, InterruptedException {
        return send(HttpRequest.newBuilder(address().resolve(path)).header("Content-Type", "application/json")
            .PUT(HttpRequest.BodyPublishers.ofString(json)));
    }

    HttpResponse<String> post(String path, String mediaType, String body, String... headers)
        throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(address().resolve(path)).header("Content-Type", mediaType)
            .POST(HttpRequest.BodyPublishers.ofString(body));
        return send(headers.length == 0 ? request : request.headers(headers));
    }

    HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        try {
            return client.send(request.timeout(PATIENCE).build(), HttpResponse.BodyHandlers.ofString());
        } catch (IOException e) {
            if (!String.valueOf(e.getMessage()).contains("received no bytes")) {
                throw e;
            }
            // A kept connection that the service closed just then; the client repeats a GET by itself, but no POST.
            return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
        }
    }

    /** Ends it at once, as a loss of power or {@code kill -9} would. */
    void kill() throws InterruptedException {
        process.toHandle().destroyForcibly();
        process.waitFor();
    }

    /** Asks it to stop: SIGTERM. */
    void terminate() {
        process.toHandle().destroy();
    }

    /** Its exit code. @throws AssertionError where it has not ended by then */
    int exitWithin(Duration time) throws InterruptedException {
        if (!process.waitFor(time.toMillis(), TimeUnit.MILLISECONDS)) {
            throw new AssertionError("The program still runs after " + time + ". It said: " + log());
        }
        return process.exitValue();
    }

    @Override
    public void close() throws IOException {
        try {
            kill();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        Files.deleteIfExists(log);
    }
}
