package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.lab.Backup;
import surfeit.lab.BackupReport;
import surfeit.lab.Expectation;
import surfeit.lab.SpotFilter;

class BackupTest {
    private static final int SPOTS_AN_IMPORT = 7;

    @TempDir
    Path folder;

    private Path data() {
        return folder.resolve("data");
    }

    @Test
    void a_backup_holds_every_row_and_is_for_its_owner_only() throws Exception {
        Path file = folder.resolve("lab.backup");
        try (LabBench bench = filled()) {
            BackupReport report = SqliteBackup.take(data(), file, LabBench.NOON);

            SortedMap<String, Long> rows = new TreeMap<>(bench.rowCounts());
            rows.keySet().removeAll(List.of("backup", "backup_count"));
            assertThat(report.rowCounts()).isEqualTo(rows).containsEntry("spot", 20L);
            assertThat(report.audit()).isEqualTo(bench.laboratory().auditLog().check());
            assertThat(report).returns(LabBench.NOON, BackupReport::made)
                .returns(Files.size(file), BackupReport::byteCount).returns(sha256(file), BackupReport::sha256);
        }
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file))).isEqualTo("rw-------");
        assertThat(names(folder)).containsExactlyInAnyOrder("data", "lab.backup");
    }

    @Test
    void backups_taken_while_writers_go_on_hold_whole_imports_and_all_that_was_acknowledged_before() throws Exception {
        ExecutorService writers = Executors.newFixedThreadPool(3);
        AtomicBoolean stop = new AtomicBoolean();
        AtomicLong acknowledged = new AtomicLong();
        try (LabBench bench = filled()) {
            for (int writer = 0; writer < 3; writer++) {
                String name = "W" + writer + "-";
                writers.submit(() -> {
                    for (int i = 0; !stop.get(); i++) {
                        bench.post("A7", LabBench.spots(name + i + "-", SPOTS_AN_IMPORT));
                        acknowledged.addAndGet(SPOTS_AN_IMPORT);
                    }
                });
            }
            long last = 0;
            for (int round = 0; round < 6; round++) {
                while (acknowledged.get() < last + 100) {
                    Thread.sleep(2);
                }
                last = acknowledged.get();
                Path file = folder.resolve("backup-" + round);
                SqliteBackup.take(data(), file, LabBench.NOON);
                assertThat(spotsIn(file, folder.resolve("restored-" + round))).isGreaterThanOrEqualTo(last + 19);
            }
            stop.set(true);
            writers.shutdown();
            assertThat(writers.awaitTermination(30, TimeUnit.SECONDS)).isTrue();
            assertThat(acknowledged.get()).as("writers went on while copies were made").isGreaterThan(last);
        }
    }

    /** Restores a backup, checks that it is of one piece, and counts its spots. */
    private static long spotsIn(Path file, Path restored) {
        SqliteRestore.restore(file, restored, LabBench.NOON);
        try (LabBench bench = LabBench.in(restored)) {
            Map<String, Integer> byImport = new TreeMap<>();
            bench.laboratory().forEachSpot("A7", SpotFilter.ALL,
                spot -> byImport.merge(spot.importId(), 1, Integer::sum));
            assertThat(byImport.remove("imp_0001")).isEqualTo(19);
            assertThat(byImport.values()).containsOnly(SPOTS_AN_IMPORT);
            assertThat(bench.laboratory().auditLog().check().broken()).isEmpty();
            assertThat(bench.laboratory().auditLog().head().count()).isEqualTo(byImport.size() + 4L);
            return bench.laboratory().sample("A7").spotCount();
        }
    }

    @Test
    void a_file_that_exists_is_never_overwritten() throws IOException {
        filled().close();
        Path file = Files.writeString(folder.resolve("lab.backup"), "last year's");

        assertThatThrownBy(() -> SqliteBackup.take(data(), file, LabBench.NOON)).isInstanceOf(StorageException.class)
            .hasMessage("The file " + file + " exists. A backup never overwrites anything: choose another name.");

        assertThat(file).hasContent("last year's");
    }

    @Test
    void a_file_that_appears_while_the_backup_is_made_is_not_overwritten_either() throws IOException {
        Path target = folder.resolve("lab.backup");
        try (NewFile file = NewFile.in(folder)) {
            Files.writeString(target, "another's");
            assertThatThrownBy(() -> file.keepAs(target)).isInstanceOf(StorageException.class)
                .hasMessageContaining("exists");
        }
        assertThat(target).hasContent("another's");
        assertThat(names(folder)).containsExactly("lab.backup");
    }

    @Test
    void a_folder_without_a_record_and_a_place_that_is_missing_are_told_with_what_to_do() {
        assertThatThrownBy(() -> SqliteBackup.take(data(), folder.resolve("b"), LabBench.NOON))
            .isInstanceOf(StorageException.class).hasMessageContaining("There is no record in the data folder")
            .hasMessageContaining("--data");
        assertThat(data()).doesNotExist();

        filled().close();
        assertThatThrownBy(() -> SqliteBackup.take(data(), folder.resolve("no/such/b"), LabBench.NOON))
            .isInstanceOf(StorageException.class).hasMessageContaining("Name a folder that exists");
    }

    @Test
    void a_damaged_record_gives_no_backup_and_leaves_nothing_behind() throws IOException {
        filled().close();
        try (RandomAccessFile file = new RandomAccessFile(data().resolve("surfeit.db").toFile(), "rw")) {
            file.seek(file.length() - 2 * 4096);
            file.write("overwritten by something else".repeat(100).getBytes(StandardCharsets.US_ASCII));
        }

        assertThatThrownBy(() -> SqliteBackup.take(data(), folder.resolve("b"), LabBench.NOON))
            .isInstanceOf(StorageException.class).hasMessageContaining("is damaged");

        assertThat(names(folder)).containsExactly("data");
    }

    @Test
    void an_audit_that_is_broken_already_is_told_and_does_not_stand_in_the_way() throws Exception {
        filled().close();
        TamperedFile.change(data().resolve("surfeit.db"), "UPDATE audit SET who = 'ben' WHERE id = 2");
        Path file = folder.resolve("lab.backup");

        BackupReport report = SqliteBackup.take(data(), file, LabBench.NOON);

        assertThat(report.audit().broken()).get().returns(2L, broken -> broken.number());
        SqliteRestore.restore(file, folder.resolve("restored"), LabBench.NOON);
    }

    @Test
    void a_running_service_hands_out_a_copy_that_is_gone_once_it_was_read() throws Exception {
        try (LabBench bench = filled()) {
            Path file = folder.resolve("sent.backup");
            BackupReport report;
            try (Backup backup = bench.laboratory().backup(LabBench.NOON)) {
                report = backup.report();
                Files.copy(backup.bytes(), file);
            }

            assertThat(sha256(file)).isEqualTo(report.sha256());
            assertThat(names(data())).noneMatch(name -> name.contains("partial"));
            assertThat(SqliteRestore.restore(file, folder.resolve("restored"), LabBench.NOON)).isEqualTo(report);
        }
    }

    @Test
    void what_a_killed_backup_left_in_the_data_folder_is_removed_when_it_is_opened_next() throws IOException {
        filled().close();
        Files.writeString(data().resolve("surfeit-123.partial"), "half a copy");
        Files.writeString(data().resolve("surfeit-123.partial-wal"), "half a log");
        Files.writeString(data().resolve("surfeit-notes.txt"), "the lab's own");

        LabBench.in(data()).close();

        assertThat(names(data())).containsExactlyInAnyOrder("surfeit.db", "surfeit.lock", "surfeit-notes.txt");
    }

    private LabBench filled() {
        LabBench bench = LabBench.in(data()).describe("A7");
        bench.post("A7", LabBench.spots("P", 20));
        bench.laboratory().correct("spt_0001", "misread", Expectation.NONE,
            (spot, sample) -> LabBench.spot("P0", "77.8"), LabBench.ANNA);
        bench.laboratory().withdraw("spt_0002", "charging", Expectation.NONE, LabBench.ANNA);
        return bench;
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).toList();
        }
    }

    private static String sha256(Path file) throws Exception {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
    }
}
