package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.lab.Laboratory;
import surfeit.lab.SpotFilter;

class KilledWriterTest {
    private static final int ROUNDS = 3;
    private static final int SPOTS_AN_IMPORT = 40;

    @TempDir
    Path folder;

    @Test
    void a_killed_writer_loses_nothing_it_acknowledged_and_leaves_no_half_import() throws Exception {
        LabBench.in(folder).describe("A7").close();
        List<String> acknowledged = new ArrayList<>();
        for (int round = 0; round < ROUNDS; round++) {
            acknowledged.addAll(importUntilKilled(round, 20 + 35 * round));
        }

        Map<String, Integer> spotsByImport = new TreeMap<>();
        try (LabBench bench = LabBench.in(folder)) {
            Laboratory lab = bench.laboratory();
            lab.forEachSpot("A7", SpotFilter.ALL, spot -> spotsByImport.merge(spot.importId(), 1, Integer::sum));
            assertThat(lab.sample("A7").spotCount())
                .isEqualTo(spotsByImport.values().stream().mapToLong(Integer::longValue).sum());
            assertThat(lab.eventLog().range().last()).isEqualTo(spotsByImport.size() + 1L);
            assertThat(lab.auditLog().check().broken()).isEmpty();
        }
        assertThat(acknowledged).hasSizeGreaterThan(ROUNDS * 20).doesNotHaveDuplicates();
        assertThat(spotsByImport.keySet()).containsAll(acknowledged);
        assertThat(spotsByImport.values()).containsOnly(SPOTS_AN_IMPORT);
    }

    /** Ids of the imports a program of its own acknowledged before it was killed in the middle of its work. */
    private List<String> importUntilKilled(int round, int acknowledgements) throws Exception {
        Process writer = new ProcessBuilder(ProcessHandle.current().info().command().orElseThrow(), "-cp",
            System.getProperty("java.class.path"), Writer.class.getName(), folder.toString(), "round" + round)
            .redirectError(ProcessBuilder.Redirect.DISCARD).start();
        List<String> ids = new ArrayList<>();
        try (BufferedReader said = new BufferedReader(
            new InputStreamReader(writer.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = said.readLine(); line != null; line = said.readLine()) {
                ids.add(line);
                if (ids.size() == acknowledgements) {
                    writer.toHandle().destroyForcibly();
                }
            }
        } finally {
            writer.destroyForcibly().waitFor();
        }
        return ids;
    }

    /** A program that imports without end and tells each import once it is recorded. */
    static final class Writer {
        private Writer() {
        }

        public static void main(String[] arguments) throws IOException {
            LabBench bench = LabBench.in(Path.of(arguments[0]));
            for (int i = 0; ; i++) {
                System.out.println(bench.post("A7", LabBench.spots(arguments[1] + "-" + i + "-", SPOTS_AN_IMPORT))
                    .id().orElseThrow());
                System.out.flush();
            }
        }
    }
}
