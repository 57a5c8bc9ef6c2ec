package surfeit.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.util.LibraryLoaderUtil;

/**
 * How long the jar takes to its first answer, with an archive of its classes and without, the flags of the container image
 * both times; and what it takes when idle.
 */
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

    /** The engine's library unpacked beside the jar, as in the container image. */
    private String library() throws IOException {
        String name = LibraryLoaderUtil.getNativeLibName();
        try (InputStream packed = LibraryLoaderUtil.class.getResourceAsStream(
            LibraryLoaderUtil.getNativeLibResourcePath() + "/" + name)) {
            Files.copy(packed, folder.resolve(name));
        }
        return "-Dorg.sqlite.lib.path=" + folder;
    }

    @Test
    void the_jar_with_an_archive_of_its_classes_and_without() throws Exception {
        assumeThat(ServiceProcess.hasJar()).as("target/surfeit.jar, made by mvn package").isTrue();
        List<String> without = List.of("-XX:+UseSerialGC", "-Xms8m", "-Xmx64m", library());
        start("record", without); // makes the record, so that all further starts open the same one
        Path archive = folder.resolve("surfeit.jsa");
        start("record", with("-XX:ArchiveClassesAtExit=" + archive, without));
        assertThat(archive).isNotEmptyFile();
        List<String> with = with("-XX:SharedArchiveFile=" + archive, without);
        InTurns turns = InTurns.of(() -> start("record", without), () -> start("record", with));
        Goal.START.measured(InTurns.digits(turns.ceiling()) + " ms", InTurns.digits(turns.ours()) + " ms",
            InTurns.digits(turns.ratio()), turns.ratio() <= 0.55);
        try (ServiceProcess service = ServiceProcess.start(folder.resolve("record"), with)) {
            Thread.sleep(SETTLED_MS);
            double resident = service.residentMegabytes();
            Goal.IDLE_MEMORY.measured("", InTurns.digits(resident) + " MB", "", resident <= 100);
        }
        assertThat(turns.ours()).isPositive();
    }

    private static List<String> with(String option, List<String> options) {
        return Stream.concat(Stream.of(option), options.stream()).toList();
    }
}
