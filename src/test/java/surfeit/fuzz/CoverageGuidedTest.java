package surfeit.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Lets Jazzer search, for an input that breaks a promise, along the branches of the program that inputs reach: in a
 * process of its own for each target, from the same corpus. What it finds it keeps in {@code target/fuzz/guided-…} and
 * goes on from there the next time. Only {@code mvn -Pfuzz verify} brings Jazzer and runs this.
 */
@Tag("fuzz")
@Tag("guided")
class CoverageGuidedTest {
    private static final Pattern DONE = Pattern.compile("Done (\\d+) runs");
    private static final Pattern COUNTED = Pattern.compile("(?m)^#(\\d+)\\s");
    private static final String SECONDS = System.getProperty("surfeit.fuzz.seconds", "60");
    private static final String SEED = System.getProperty("surfeit.fuzz.seed", "20261124");

    @ParameterizedTest
    @CsvSource({"tables, surfeit.intake.TableFuzz, src/test/resources/uploads", "json, surfeit.http.json.JsonFuzz, "})
    void a_search_guided_by_coverage_finds_no_broken_promise(String name, String target, String more)
            throws IOException, InterruptedException {
        Path found = Files.createDirectories(Path.of("target", "fuzz", "guided-" + name));
        Path log = found.resolveSibling("guided-" + name + ".log");
        List<String> command = new ArrayList<>(List.of(ProcessHandle.current().info().command().orElseThrow(),
            "-Xmx600m", "-XX:+UseSerialGC", "-Dsurfeit.fuzz.guided=true", "-cp", System.getProperty("java.class.path"),
            "com.code_intelligence.jazzer.Jazzer", "--target_class=" + target,
            "--instrumentation_includes=surfeit.**:de.siegmar.**", "--reproducer_path=" + found.getParent(),
            "-artifact_prefix=" + found.getParent() + "/guided-" + name + "-", "-max_total_time=" + SECONDS,
            "-seed=" + SEED, "-timeout=60", "-rss_limit_mb=2000", found.toString(),
            Corpus.folder(name).toString()));
        if (more != null) {
            command.add(more);
        }
        int exitCode = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile()).start()
            .waitFor();
        String said = Files.readString(log);
        String line = "fuzz: " + name + ", guided by coverage: " + count(said) + " inputs fuzzed, "
            + (exitCode == 0 ? 0 : 1) + " failures";
        System.out.println(line);
        Files.writeString(found.resolveSibling("guided-" + name + ".txt"), line + "\n");
        assertThat(exitCode).as(said.substring(Math.max(0, said.length() - 4000))).isZero();
    }

    private static long count(String said) {
        Matcher done = DONE.matcher(said);
        if (done.find()) {
            return Long.parseLong(done.group(1));
        }
        return COUNTED.matcher(said).results().mapToLong(found -> Long.parseLong(found.group(1))).max().orElse(0);
    }
}
