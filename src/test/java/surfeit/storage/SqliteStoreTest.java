package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.RandomAccessFile;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.sql.Statement;
import java.util.Optional;
import org.jdbi.v3.core.ConnectionException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.lab.EventFilter;
import surfeit.lab.PageRequest;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.SampleFilter;
import surfeit.lab.SpotFilter;
import surfeit.segregation.answer.GroupBy;

class SqliteStoreTest {
    @TempDir
    Path folder;

    @Test
    void what_was_recorded_is_there_after_closing_and_opening_again() {
        try (LabBench lab = LabBench.in(folder)) {
            lab.describe("A7").post("A7", LabBench.spot("P1-1", "78.8"));
        }
        try (LabBench lab = LabBench.in(folder)) {
            assertThat(lab.laboratory().sample("A7").spotCount()).isEqualTo(1);
            assertThat(lab.laboratory().spot("spt_0001").spot()).isEqualTo(LabBench.spot("P1-1", "78.8"));
        }
    }

    @Test
    void a_missing_folder_is_made() {
        Path missing = folder.resolve("lab/data");

        LabBench.in(missing).close();

        assertThat(missing.resolve("surfeit.db")).exists();
    }

    @Test
    void the_file_is_opened_for_safety() {
        try (LabBench lab = LabBench.in(folder)) {
            assertThat(pragma(lab, "journal_mode")).isEqualTo("wal");
            assertThat(pragma(lab, "synchronous")).isEqualTo("2");
            assertThat(pragma(lab, "foreign_keys")).isEqualTo("1");
            assertThatThrownBy(() -> lab.store().read(access ->
                ((SqlReadAccess) access).handle.execute("DELETE FROM audit"))).hasMessageContaining("readonly");
        }
    }

    @Test
    void statements_that_are_kept_hold_on_to_no_old_state() throws Exception {
        try (LabBench lab = LabBench.in(folder)) {
            lab.describe("A7").describe("B9").post("A7", LabBench.spots("P", 20));
            lab.laboratory().samples(new SampleFilter(Optional.empty(), Optional.empty()), PageRequest.first(1));
            lab.laboratory().spots("A7", SpotFilter.ALL, PageRequest.first(3));
            lab.laboratory().events(EventFilter.ALL, 0, 1);
            lab.laboratory().segregation("A7", GroupBy.FEATURE);
            assertThatThrownBy(() -> lab.post("A7", LabBench.spot("P0", "1.5"))).isInstanceOf(ProblemException.class);
            lab.post("A7", LabBench.spot("Q1", "78.8"));

            try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("surfeit.db"));
                 Statement statement = other.createStatement();
                 ResultSet done = statement.executeQuery("PRAGMA wal_checkpoint(TRUNCATE)")) {
                assertThat(done.getInt("busy")).as("somebody reads an older state").isZero();
            }
            assertThat(Files.size(folder.resolve("surfeit.db-wal"))).isZero();
        }
    }

    @Test
    void a_failure_within_the_record_does_not_repeat_the_values_that_went_in() {
        try (LabBench lab = LabBench.in(folder)) {
            assertThatThrownBy(() -> lab.store().write(access -> ((SqlReadAccess) access).handle
                .createUpdate("INSERT INTO sample (name, revision) VALUES (:name, :revision)")
                .bind("name", "lot seven").bind("revision", "ninety-nine").execute()))
                .hasStackTraceContaining("NOT NULL").satisfies(failure -> {
                    StringWriter trace = new StringWriter();
                    failure.printStackTrace(new PrintWriter(trace));
                    assertThat(trace.toString()).doesNotContain("lot seven").doesNotContain("ninety-nine");
                });
        }
    }

    private static String pragma(LabBench lab, String name) {
        return lab.store().write(access -> ((SqlReadAccess) access).handle
            .createQuery("PRAGMA " + name).mapTo(String.class).one());
    }

    @Test
    void a_file_in_place_of_the_folder_is_named() throws IOException {
        Path file = Files.createFile(folder.resolve("data"));

        assertThatThrownBy(() -> SqliteStore.open(file)).isInstanceOf(StorageException.class)
            .hasMessage("The data folder " + file + " is a file. Name a folder with --data.");
    }

    @Test
    void a_folder_that_cannot_be_made_is_named_with_what_to_do() throws IOException {
        Path file = Files.createFile(folder.resolve("data"));

        assertThatThrownBy(() -> SqliteStore.open(file.resolve("below"))).isInstanceOf(StorageException.class)
            .hasMessageContaining("cannot be made").hasMessageContaining("--data");
    }

    @Test
    void a_folder_without_the_right_to_write_is_refused_with_what_to_do() throws IOException {
        Path closed = unwritableFolder();

        assertThatThrownBy(() -> SqliteStore.open(closed)).isInstanceOf(StorageException.class)
            .hasMessageContaining("The data folder " + closed + " is not writable")
            .hasMessageContaining("Give the user that runs the service the right to write there");
    }

    /** A folder nobody can write to: the administrator may write in one without permissions, but not in /proc. */
    private Path unwritableFolder() throws IOException {
        Path closed = Files.createDirectory(folder.resolve("closed"),
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("r-xr-xr-x")));
        return Files.isWritable(closed) ? Path.of("/proc") : closed;
    }

    @Test
    void a_file_that_cannot_be_opened_for_writing_is_refused_and_the_folder_given_back() throws IOException {
        Path file = Files.createDirectory(folder.resolve("surfeit.db"));

        assertThatThrownBy(() -> SqliteStore.open(folder)).isInstanceOf(StorageException.class)
            .hasMessageContaining("The file " + file + " cannot be opened for reading and writing");

        Files.delete(file);
        LabBench.in(folder).close();
    }

    @Test
    void a_file_of_a_newer_program_is_refused_untouched() throws Exception {
        LabBench.in(folder).close();
        change("INSERT INTO flyway_schema_history (installed_rank, version, description, type, script, installed_by, "
            + "execution_time, success) VALUES (99, '99', 'later', 'SQL', 'V99__later.sql', '', 1, 1)");
        byte[] before = Files.readAllBytes(folder.resolve("surfeit.db"));

        assertThatThrownBy(() -> SqliteStore.open(folder)).isInstanceOf(StorageException.class)
            .hasMessageContaining("written by a newer program").hasMessageContaining("its form is 99")
            .hasMessageContaining("Run the newer program, or restore a backup");

        assertThat(Files.readAllBytes(folder.resolve("surfeit.db"))).isEqualTo(before);
    }

    @Test
    void a_database_of_another_program_is_refused() throws Exception {
        change("CREATE TABLE recipes (id INTEGER)");

        assertThatThrownBy(() -> SqliteStore.open(folder)).isInstanceOf(StorageException.class)
            .hasMessageContaining("is a database of another program");
    }

    private void change(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("surfeit.db"));
             Statement statement = connection.createStatement()) {
            statement.executeUpdate(sql);
        }
    }

    @Test
    void a_file_that_is_no_database_is_called_damaged() throws IOException {
        Files.writeString(folder.resolve("surfeit.db"), "label;Ag at%;Cu at%\nP1-1;21,2;78,8\n".repeat(100));

        assertThatThrownBy(() -> SqliteStore.open(folder)).isInstanceOf(StorageException.class)
            .hasMessageContaining("is damaged").hasMessageContaining("restore the last backup");
    }

    @Test
    void overwritten_pages_are_found_when_the_file_is_opened() throws IOException {
        filled();
        try (RandomAccessFile file = new RandomAccessFile(folder.resolve("surfeit.db").toFile(), "rw")) {
            for (long at = 8 * 4096; at + 4096 <= file.length(); at += 4096) {
                file.seek(at);
                file.write("overwritten by something else".repeat(100).getBytes(StandardCharsets.US_ASCII));
            }
        }

        assertThatThrownBy(() -> SqliteStore.open(folder)).isInstanceOf(StorageException.class)
            .hasMessageContaining("is damaged").hasMessageContaining("restore the last backup");
    }

    @Test
    void a_file_cut_short_is_found_when_it_is_opened() throws IOException {
        filled();
        try (RandomAccessFile file = new RandomAccessFile(folder.resolve("surfeit.db").toFile(), "rw")) {
            file.setLength(file.length() / 2);
        }

        assertThatThrownBy(() -> SqliteStore.open(folder)).isInstanceOf(StorageException.class)
            .hasMessageContaining("is damaged");
    }

    private void filled() {
        try (LabBench lab = LabBench.in(folder)) {
            lab.describe("A7").post("A7", LabBench.spots("P", 500));
        }
    }

    @Test
    void a_closed_record_says_that_the_service_stops() {
        LabBench lab = LabBench.in(folder);
        lab.close();
        lab.close();

        LabBench.assertRefused(() -> lab.laboratory().samples(SampleFilter.ALL, PageRequest.first(10)),
            Problem.SHUTTING_DOWN);
        LabBench.assertRefused(() -> lab.describe("A8"), Problem.SHUTTING_DOWN);
    }

    @Test
    void the_form_this_program_knows_is_that_of_its_newest_migration() throws IOException {
        try (var files = Files.list(Path.of("src/main/resources/db/migration/sqlite"))) {
            assertThat(files.map(file -> file.getFileName().toString().replaceFirst("^V(\\d+)__.*\\.sql$", "$1"))
                .mapToInt(Integer::parseInt).max()).hasValue(FileCheck.SCHEMA);
        }
    }

    @Test
    void a_request_that_waited_in_vain_for_a_connection_is_told_to_come_again() {
        RuntimeException waited = new ConnectionException(new SQLTransientConnectionException("timed out"));
        assertThat(Failures.working(Path.of("lab", "surfeit.db"), waited)).isInstanceOfSatisfying(ProblemException.class,
            refusal -> assertThat(refusal).returns(Problem.STORAGE_UNAVAILABLE, ProblemException::problem)
                .hasMessageContaining("Send this one again"));
    }
}
