package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.lab.AuditChain;
import surfeit.lab.AuditCheck;
import surfeit.lab.AuditHead;
import surfeit.lab.EventFilter;
import surfeit.lab.Expectation;
import surfeit.lab.LabEvent;
import surfeit.lab.PageRequest;
import surfeit.lab.SpotFilter;
import surfeit.segregation.answer.GroupBy;

class RestoreTest {
    @TempDir
    static Path lab;
    private static AuditHead head;

    @TempDir
    Path folder;
    private Path backup;
    private Path restored;

    @BeforeAll
    static void record() {
        try (LabBench bench = LabBench.in(data()).describe("A7")) {
            bench.post("A7", LabBench.spots("P", 12));
            bench.laboratory().correct("spt_0001", "misread", Expectation.NONE,
                (spot, sample) -> LabBench.spot("P0", "77.8"), LabBench.ANNA);
            bench.laboratory().withdraw("spt_0002", "charging", Expectation.NONE, LabBench.ANNA);
            head = bench.laboratory().auditLog().head();
            SqliteBackup.take(data(), lab.resolve("lab.backup"), LabBench.NOON);
        }
    }

    @BeforeEach
    void copy() throws IOException {
        backup = Files.copy(lab.resolve("lab.backup"), folder.resolve("lab.backup"));
        restored = folder.resolve("restored");
    }

    private static Path data() {
        return lab.resolve("data");
    }

    @Test
    void a_restored_record_gives_the_same_answers_and_its_audit_still_checks() {
        restore();

        try (LabBench first = LabBench.in(data()); LabBench second = LabBench.in(restored)) {
            assertThat(second.laboratory().auditLog().check()).isEqualTo(new AuditCheck(head, Optional.empty()));
            assertThat(second.laboratory().segregation("A7", GroupBy.FEATURE).interpretation().groups())
                .isEqualTo(first.laboratory().segregation("A7", GroupBy.FEATURE).interpretation().groups());
            assertThat(second.laboratory().spots("A7", SpotFilter.ALL.withWithdrawn(), PageRequest.first(100)))
                .isEqualTo(first.laboratory().spots("A7", SpotFilter.ALL.withWithdrawn(), PageRequest.first(100)));
            assertThat(second.laboratory().spotRevisions("spt_0001"))
                .isEqualTo(first.laboratory().spotRevisions("spt_0001")).hasSize(2);
            assertThat(second.laboratory().imports().original("imp_0001").bytes())
                .hasSameContentAs(first.laboratory().imports().original("imp_0001").bytes());
        }
    }

    @Test
    void work_goes_on_in_a_restored_record_with_the_next_numbers() {
        restore();

        try (LabBench bench = LabBench.in(restored)) {
            assertThat(bench.post("A7", LabBench.spot("P0", "77.8")).unchangedCount()).isEqualTo(1);
            assertThat(bench.post("A7", LabBench.spot("new", "70")).id()).contains("imp_0002");
            assertThat(bench.laboratory().auditLog().check()).returns(Optional.empty(), AuditCheck::broken)
                .returns(head.count() + 1, check -> check.head().count());
            assertThat(bench.laboratory().events(EventFilter.ALL, 0, 100)).extracting(LabEvent::id)
                .containsExactly(1L, 2L, 3L, 4L, 5L);
        }
    }

    @Test
    void a_backup_of_a_restored_record_restores_again() {
        restore();
        Path second = folder.resolve("second.backup");
        SqliteBackup.take(restored, second, LabBench.NOON.plusSeconds(60));

        SqliteRestore.restore(second, folder.resolve("again"), LabBench.NOON);

        try (LabBench bench = LabBench.in(folder.resolve("again"))) {
            assertThat(bench.laboratory().auditLog().check()).isEqualTo(new AuditCheck(head, Optional.empty()));
            assertThat(bench.rowCounts()).containsEntry("backup", 2L);
        }
    }

    @Test
    void a_record_in_use_is_not_restored_over() {
        LabBench.in(restored).describe("B1").close();
        try (LabBench bench = LabBench.in(restored)) {
            assertThatThrownBy(this::restore).isInstanceOf(StorageException.class)
                .hasMessageContaining("in use by another running program");
            assertThat(bench.laboratory().sample("B1").revision()).isEqualTo(1);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"surfeit.db", "notes.txt", ".hidden"})
    void a_folder_that_holds_anything_is_left_as_it_is(String name) throws IOException {
        Files.createDirectory(restored);
        Files.writeString(restored.resolve(name), "the lab's own");

        assertThatThrownBy(this::restore).isInstanceOf(StorageException.class)
            .hasMessageContaining("is not empty (it holds " + name + ")")
            .hasMessageContaining("name a new or empty folder with --data");

        assertThat(restored).isDirectoryContaining(file -> file.endsWith(name));
        assertThat(restored.resolve(name)).hasContent("the lab's own");
    }

    @Test
    void an_empty_folder_will_do_also_one_with_what_a_killed_restore_left() throws IOException {
        Files.createDirectory(restored);
        Files.writeString(restored.resolve("surfeit.lock"), "123\n");
        Files.writeString(restored.resolve("surfeit-123.partial"), "half a copy");

        restore();

        try (Stream<Path> files = Files.list(restored)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                .containsExactlyInAnyOrder("surfeit.db", "surfeit.lock");
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "DELETE FROM audit WHERE id = (SELECT max(id) FROM audit)                    | its audit does not fit",
        "UPDATE audit SET who = 'ben' WHERE id = 1                                   | its audit does not fit",
        "UPDATE backup SET audit_hash = replace(audit_hash, 'a', 'b')                | its audit does not fit",
        "UPDATE backup SET audit_count = audit_count - 1                             | its audit does not fit",
        "DELETE FROM spot_revision WHERE n = 2                                       | row 3 tells is not on record",
        "DELETE FROM event                                                           | expected these rows",
        "DROP TABLE import_fault                                                     | expected these rows",
        "UPDATE spot SET import = 99 WHERE id = 3                                     | refers to one that is missing",
        "DELETE FROM backup_count                                                    | expected these rows",
        "UPDATE backup SET made = 'yesterday'                                        | is damaged",
        "DELETE FROM backup                                                          | is no backup",
        "UPDATE flyway_schema_history SET version = '99'                             | made by a newer program"})
    void a_backup_that_was_changed_is_refused_and_leaves_the_folder_empty(String tampering, String how)
        throws Exception {
        TamperedFile.change(backup, tampering);

        assertRefused(how);
    }

    @Test
    void a_backup_cut_short_or_overwritten_or_of_something_else_is_refused() throws IOException {
        byte[] whole = Files.readAllBytes(backup);
        try (RandomAccessFile file = new RandomAccessFile(backup.toFile(), "rw")) {
            file.setLength(whole.length / 2);
        }
        assertRefused("is damaged");

        byte[] overwritten = whole.clone();
        Arrays.fill(overwritten, whole.length - 8192, whole.length - 100, (byte) 'x');
        Files.write(backup, overwritten);
        assertRefused("is damaged");

        Files.writeString(backup, "label;Ag at%;Cu at%\nP1-1;21,2;78,8\n".repeat(100));
        assertRefused("is damaged");

        Files.write(backup, new byte[0]);
        assertRefused("is no backup");

        Files.delete(backup);
        assertRefused("There is no backup file");
    }

    @Test
    void a_plain_copy_of_the_data_file_is_no_backup() throws IOException {
        Files.delete(backup);
        Files.copy(data().resolve("surfeit.db"), backup);

        assertRefused("is no backup");
    }

    private void assertRefused(String how) {
        assertThatThrownBy(this::restore).isInstanceOf(StorageException.class).hasMessageContaining(how)
            .hasMessageContaining(backup.toString());
        assertThat(restored.resolve("surfeit.db")).doesNotExist();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "DELETE FROM audit WHERE id = 4                         | 4 | is missing",
        "DELETE FROM audit WHERE id > 1                         | 2 | is missing",
        "DELETE FROM audit                                      | 1 | is missing"})
    void a_tail_cut_after_the_restore_shows(String tampering, long row, String what) throws Exception {
        restore();
        TamperedFile.change(restored.resolve("surfeit.db"), tampering);

        assertThat(check().broken()).get().returns(row, AuditCheck.Broken::number)
            .satisfies(broken -> assertThat(broken.what()).contains(what));
    }

    @Test
    void an_audit_written_anew_from_the_start_shows_against_the_head_that_came_with_the_backup() throws Exception {
        restore();
        Path other = folder.resolve("other");
        try (LabBench bench = LabBench.in(other)) {
            for (int i = 0; i < 4; i++) {
                bench.describe("B" + i);
            }
        }
        giveNoteTo(other);

        AuditCheck check = RecordFile.read(other, access -> AuditChain.check(access, List.of()));
        assertThat(check.broken()).get().returns(4L, AuditCheck.Broken::number)
            .satisfies(broken -> assertThat(broken.what()).contains("written anew"));
    }

    /** Puts the note of the restored record into another one, which then poses as it. */
    private void giveNoteTo(Path other) throws Exception {
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + other.resolve("surfeit.db"));
             var statement = connection.createStatement()) {
            statement.execute("ATTACH '" + restored.resolve("surfeit.db") + "' AS restored");
            statement.execute("INSERT INTO backup SELECT * FROM restored.backup");
        }
    }

    @Test
    void the_audit_of_a_record_in_use_is_checked_from_outside_and_against_a_head_noted_elsewhere() {
        try (LabBench bench = LabBench.in(data())) {
            AuditCheck check = RecordFile.read(data(), access -> AuditChain.check(access, List.of(head)));
            assertThat(check).isEqualTo(new AuditCheck(head, Optional.empty()));
            AuditHead later = new AuditHead(9, head.hash());
            assertThat(RecordFile.read(data(), access -> AuditChain.check(access, List.of(later))).broken())
                .get().returns(5L, AuditCheck.Broken::number);
            assertThat(bench.rowCounts()).containsAllEntriesOf(Map.of("audit", 4L, "backup", 0L));
        }
    }

    private AuditCheck check() {
        return RecordFile.read(restored, access -> AuditChain.check(access, List.of()));
    }

    private void restore() {
        SqliteRestore.restore(backup, restored, LabBench.NOON);
    }
}
