package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** A run of one of the client scripts in {@code shared/clients}: its exit code and all it printed. */
record ClientRun(int code, String out) {
    static final Path CLIENTS = Path.of("shared", "clients").toAbsolutePath();
    private static final int SECONDS_MAX = 60;

    /** Starts a script. @param words the command and its arguments */
    static Process start(Path folder, Map<String, String> environment, List<String> words) throws IOException {
        ProcessBuilder builder = new ProcessBuilder(words).directory(folder.toFile()).redirectErrorStream(true);
        builder.environment().keySet().removeIf(name -> name.startsWith("SURFEIT_"));
        builder.environment().putAll(Map.of("PYTHONPATH", CLIENTS.toString(), "PYTHONDONTWRITEBYTECODE", "1",
            "PYTHONIOENCODING", "utf-8", "NO_PROXY", "*"));
        builder.environment().putAll(environment);
        return builder.start();
    }

    static ClientRun of(Path folder, Map<String, String> environment, List<String> words)
            throws IOException, InterruptedException {
        Process process = start(folder, environment, words);
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(SECONDS_MAX, TimeUnit.SECONDS)).isTrue();
        return new ClientRun(process.exitValue(), out);
    }

    /** Skips the test, aloud, where a program is missing. */
    static void needs(String program) {
        boolean there = List.of(System.getenv("PATH").split(java.io.File.pathSeparator)).stream()
            .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
        if (!there) {
            System.err.println("skipped: no " + program + " on this machine, so its client was not run");
        }
        assumeTrue(there, "no " + program + " on this machine: its client was not run");
    }
}
