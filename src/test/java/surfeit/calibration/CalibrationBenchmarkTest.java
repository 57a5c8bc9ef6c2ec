package surfeit.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The whole benchmark: {@code mvn -Pcalibration verify} prints the table and writes {@code calibration.txt},
 * {@code .csv} and {@code .svg} under {@code target/}.
 */
@Tag("calibration")
class CalibrationBenchmarkTest {
    private static final Path TARGET = Path.of("target");

    @Test
    void every_miss_of_a_target_is_printed_and_has_a_known_reason() throws IOException {
        long start = System.nanoTime();
        List<Result> results = Benchmark.FULL.run(Cells.all());
        String text = TextReport.of(results, Benchmark.FULL);
        Files.createDirectories(TARGET);
        Files.writeString(TARGET.resolve("calibration.txt"), text);
        Files.writeString(TARGET.resolve("calibration.csv"), CsvTable.of(results));
        Files.writeString(TARGET.resolve("calibration.svg"), Chart.of(results));
        System.out.println(text);
        System.out.printf("Took %d s. Written to %s.%n", (System.nanoTime() - start) / 1_000_000_000,
            TARGET.resolve("calibration.txt"));
        List<Result> unexplained = results.stream()
            .filter(result -> !result.misses().isEmpty() && result.knownWeakness().isEmpty()).toList();
        assertThat(unexplained).as("cells that miss a target for no known reason")
            .extracting(result -> result.label().key() + ": " + result.status()).isEmpty();
    }
}
