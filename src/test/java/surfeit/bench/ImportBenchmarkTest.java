package surfeit.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A large table over HTTP, to the answer that says it is durable, beside its rows written by nothing but the engine. */
@Tag("bench")
class ImportBenchmarkTest {
    private static final int SPOTS = 200_000;
    private static final int ROUNDS = 5;
    private static final int MANY_SPOTS = 1_000_000;

    @TempDir
    Path folder;
    private CopiedRows rows;

    private double ours(byte[] table) throws IOException {
        try (BenchService service = new BenchService()) {
            service.put("/v1/samples/big", BenchService.SAMPLE);
            long start = System.nanoTime();
            String report = service.post("/v1/samples/big/spots", "text/csv", table);
            double perSecond = SPOTS / ((System.nanoTime() - start) / 1e9);
            assertThat(report).contains("\"accepted_count\":" + SPOTS);
            if (rows == null) {
                rows = CopiedRows.of(service.folder().resolve("surfeit.db"));
            }
            return perSecond;
        }
    }

    @Test
    void a_large_table_beside_a_bare_batched_insert_of_its_rows() throws Exception {
        byte[] table = BenchService.table("s", SPOTS, 100);
        ours(table);
        InTurns turns = InTurns.of(ROUNDS, () -> SPOTS / rows.write(folder.resolve("bare.db")), () -> ours(table));
        Goal.IMPORT.measured(InTurns.digits(turns.ceiling()) + " spots/s", InTurns.digits(turns.ours()) + " spots/s",
            InTurns.digits(turns.ratio()), turns.ratio() >= 0.75);
        assertThat(turns.ours()).isPositive();
    }

    @Test
    void a_million_spots_in_64_mebibytes() throws Exception {
        Path table = folder.resolve("million.csv");
        Files.write(table, BenchService.table("s", MANY_SPOTS, 100));
        try (ServiceProcess service = ServiceProcess.start(folder.resolve("data"), List.of("-Xmx64m", "-XX:+UseSerialGC"))) {
            service.put("/v1/samples/big", BenchService.SAMPLE);
            long start = System.nanoTime();
            String report = service.post("/v1/samples/big/spots", "text/csv", table);
            double seconds = (System.nanoTime() - start) / 1e9;
            boolean recorded = report.contains("\"accepted_count\":" + MANY_SPOTS);
            Goal.IMPORT_MEMORY.measured("", InTurns.digits(MANY_SPOTS / seconds) + " spots/s, "
                + InTurns.digits(service.peakMegabytes()) + " MB resident at most", "", recorded);
            assertThat(report).contains("accepted_count");
        }
    }
}
