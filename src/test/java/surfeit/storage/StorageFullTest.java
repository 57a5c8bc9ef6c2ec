package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.lab.PageRequest;
import surfeit.lab.Problem;
import surfeit.lab.SpotFilter;

class StorageFullTest {
    @TempDir
    Path folder;

    @Test
    void a_full_disk_refuses_the_write_keeps_the_record_readable_and_recovers_with_room() {
        try (LabBench bench = LabBench.in(folder).describe("A7")) {
            bench.post("A7", LabBench.spots("P", 100));
            Map<String, Long> before = bench.rowCounts();
            limitPages(bench, "(SELECT page_count + 20 FROM pragma_page_count)");

            LabBench.assertRefused(() -> bench.post("A7", LabBench.spots("Q", 10_000)), Problem.STORAGE_FULL);

            assertThat(bench.rowCounts()).isEqualTo(before);
            assertThat(bench.laboratory().spots("A7", SpotFilter.ALL, PageRequest.first(1000)).items()).hasSize(100);
            limitPages(bench, "1000000");
            assertThat(bench.post("A7", LabBench.spots("Q", 10_000)).acceptedCount()).isEqualTo(10_000);
            assertThat(bench.laboratory().auditLog().check().broken()).isEmpty();
        }
    }

    /** Lets the engine take so many pages and no more, as a full disk would. */
    private static void limitPages(LabBench bench, String pages) {
        bench.store().write(access -> {
            var handle = ((SqlReadAccess) access).handle;
            long count = handle.createQuery("SELECT " + pages).mapTo(Long.class).one();
            return handle.createQuery("PRAGMA max_page_count = " + count).mapTo(Long.class).one();
        });
    }
}
