package surfeit.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How long the jar takes to its first answer, with an archive of its classes and without; and what it takes when idle. */
@Tag("bench")
class StartBenchmarkTest {
    private static final long SETTLED_MS = 3000;

    @TempDir
    Path folder;

    private double start(String data, List<String> options) throws IOException {
        try (ServiceProcess service = ServiceProcess.start(folder.resolve(data), options)) {
            return service.startMs();
        }
    }

    private Path archive() throws IOException, InterruptedException {
        Path archive = folder.resolve("surfeit.jsa");
        int exitCode = new ProcessBuilder(ProcessHandle.current().info().command().orElseThrow(),
            "-XX:ArchiveClassesAtExit=" + archive, "-XX:+UseSerialGC", "-jar", "target/surfeit.jar", "demo", "--once")
            .redirectErrorStream(true).redirectOutput(folder.resolve("demo.txt").toFile()).start().waitFor();
        assertThat(exitCode).as(Files.readString(folder.resolve("demo.txt"))).isZero();
        return archive;
    }

    @Test
    void the_jar_with_an_archive_of_its_classes_and_without() throws Exception {
        assumeThat(ServiceProcess.hasJar()).as("target/surfeit.jar, made by mvn package").isTrue();
        List<String> with = List.of("-XX:SharedArchiveFile=" + archive(), "-XX:+UseSerialGC", "-Xms8m", "-Xmx64m");
        start("record", List.of()); // makes the record, so that all further starts open the same one
        InTurns turns = InTurns.of(() -> start("record", List.of()), () -> start("record", with));
        Goal.START.measured(InTurns.digits(turns.ceiling()) + " ms", InTurns.digits(turns.ours()) + " ms",
            InTurns.digits(turns.ratio()), turns.ratio() <= 0.55);
        try (ServiceProcess service = ServiceProcess.start(folder.resolve("record"), with)) {
            Thread.sleep(SETTLED_MS);
            double resident = service.residentMegabytes();
            Goal.IDLE_MEMORY.measured("", InTurns.digits(resident) + " MB", "", resident <= 100);
        }
        assertThat(turns.ours()).isPositive();
    }
}
