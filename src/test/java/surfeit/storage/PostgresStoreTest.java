package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.lab.PageRequest;
import surfeit.lab.Problem;
import surfeit.lab.SampleFilter;
import surfeit.postgresql.PostgresServer;

/** The record in a PostgreSQL database: how it is opened, and what it refuses. */
class PostgresStoreTest {
    private static final RecordEngine ENGINE = RecordEngine.POSTGRESQL;

    @TempDir
    Path folder;

    @Test
    void what_was_recorded_is_there_after_closing_and_opening_again() {
        try (LabBench lab = LabBench.in(ENGINE, folder)) {
            lab.describe("A7").post("A7", LabBench.spot("P1-1", "78.8"));
        }
        try (LabBench lab = LabBench.in(ENGINE, folder)) {
            assertThat(lab.laboratory().sample("A7").spotCount()).isEqualTo(1);
            assertThat(lab.laboratory().spot("spt_0001").spot()).isEqualTo(LabBench.spot("P1-1", "78.8"));
        }
    }

    @Test
    void writers_write_through_and_readers_see_one_state_and_change_nothing() {
        try (LabBench lab = LabBench.in(ENGINE, folder)) {
            assertThat(shown(lab, "synchronous_commit")).isEqualTo("on");
            assertThat(lab.store().<String>read(access -> ((SqlReadAccess) access).handle
                .createQuery("SHOW transaction_isolation").mapTo(String.class).one())).isEqualTo("repeatable read");
            assertThatThrownBy(() -> lab.store().read(access ->
                ((SqlReadAccess) access).handle.execute("DELETE FROM audit"))).hasMessageContaining("read only");
        }
    }

    @Test
    void a_server_that_is_told_not_to_write_through_is_told_otherwise() throws SQLException {
        DatabaseAddress address = RecordEngine.PostgresDatabases.of(folder);
        String database = address.url().replaceAll(".*/", "");
        ENGINE.change(folder, "ALTER DATABASE " + database + " SET synchronous_commit = off");
        try (LabBench lab = LabBench.in(ENGINE, folder)) {
            assertThat(shown(lab, "synchronous_commit")).isEqualTo("on");
        } finally {
            ENGINE.change(folder, "ALTER DATABASE " + database + " RESET synchronous_commit");
        }
    }

    private static String shown(LabBench lab, String setting) {
        return lab.store().write(access -> ((SqlReadAccess) access).handle
            .createQuery("SHOW " + setting).mapTo(String.class).one());
    }

    @Test
    void a_failure_within_the_record_does_not_repeat_the_values_that_went_in() {
        try (LabBench lab = LabBench.in(ENGINE, folder)) {
            assertThatThrownBy(() -> lab.store().write(access -> ((SqlReadAccess) access).handle
                .createUpdate("INSERT INTO sample (id, name, revision) VALUES (:id, :name, 1)")
                .bind("id", 4711).bind("name", "lot seven").execute()))
                .hasStackTraceContaining("not-null").satisfies(failure -> {
                    StringWriter trace = new StringWriter();
                    failure.printStackTrace(new PrintWriter(trace));
                    assertThat(trace.toString()).doesNotContain("lot seven").doesNotContain("4711");
                });
        }
    }

    @Test
    void programs_that_start_at_the_same_moment_make_the_tables_once() throws Exception {
        String database = "started_together";
        PostgresServer.shared().createDatabase(database);
        ExecutorService programs = Executors.newFixedThreadPool(4);
        try {
            List<Future<PostgresStore>> opened = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                opened.add(programs.submit((Callable<PostgresStore>) () -> PostgresStore.open(address(database), 4)));
            }
            for (Future<PostgresStore> store : opened) {
                store.get().close();
            }
        } finally {
            programs.shutdownNow();
        }
        try (PostgresStore store = PostgresStore.open(address(database), 4)) {
            assertThat(store.<List<String>>read(access -> ((SqlReadAccess) access).handle.createQuery(
                "SELECT version FROM flyway_schema_history WHERE success ORDER BY installed_rank").mapTo(String.class)
                .list())).doesNotHaveDuplicates().endsWith(String.valueOf(FileCheck.SCHEMA));
        }
    }

    private static DatabaseAddress address(String database) {
        return new DatabaseAddress(PostgresServer.shared().url(database), Optional.of(PostgresServer.USER),
            Optional.of(PostgresServer.PASSWORD));
    }

    @Test
    void a_record_of_a_newer_program_is_refused_untouched() throws SQLException {
        LabBench.in(ENGINE, folder).close();
        ENGINE.change(folder, "INSERT INTO flyway_schema_history (installed_rank, version, description, type, script, "
            + "installed_by, execution_time, success) VALUES (99, '99', 'later', 'SQL', 'V99__later.sql', '', 1, true)");
        try {
            assertThatThrownBy(() -> ENGINE.open(folder)).isInstanceOf(StorageException.class)
                .hasMessageContaining("written by a newer program").hasMessageContaining("its form is 99");
        } finally {
            ENGINE.change(folder, "DELETE FROM flyway_schema_history WHERE installed_rank = 99");
        }
    }

    @Test
    void a_database_of_another_program_is_refused() {
        String database = "recipes";
        PostgresServer.shared().createDatabase(database);
        PostgresServer.shared().execute(database, "CREATE TABLE recipes (id bigint)");

        assertThatThrownBy(() -> PostgresStore.open(address(database), 4)).isInstanceOf(StorageException.class)
            .hasMessageContaining("holds the tables of another program").hasMessageContaining("currentSchema");
    }

    @Test
    void a_schema_of_its_own_beside_another_program_will_do() {
        String database = "shared_with_others";
        PostgresServer.shared().createDatabase(database);
        PostgresServer.shared().execute(database, "CREATE TABLE recipes (id bigint); CREATE SCHEMA lab");
        DatabaseAddress own = new DatabaseAddress(address(database).url() + "?currentSchema=lab",
            Optional.of(PostgresServer.USER), Optional.of(PostgresServer.PASSWORD));

        PostgresStore.open(own, 4).close();

        assertThat(RecordDatabase.<Long>read(own, access -> access.auditHead().count())).isZero();
    }

    @Test
    void what_is_wrong_with_the_address_is_told_with_what_to_do_and_without_the_password() {
        String url = PostgresServer.shared().url("lab_none");
        assertRefused(new DatabaseAddress(url, Optional.of(PostgresServer.USER), Optional.of("wrong secret")),
            "password authentication failed", "Check database-user and database-password");
        assertRefused(address("lab_none"), "does not exist", "Make the database first");
        assertRefused(new DatabaseAddress("jdbc:postgresql://127.0.0.1:1/lab?password=wrong secret", Optional.empty(),
            Optional.empty()), "jdbc:postgresql://127.0.0.1:1/lab", "Check host and port");
    }

    private static void assertRefused(DatabaseAddress address, String... words) {
        assertThatThrownBy(() -> PostgresStore.open(address, 4)).isInstanceOf(StorageException.class)
            .message().contains(words).doesNotContain("wrong secret");
    }

    @Test
    void a_database_without_a_record_is_not_looked_into() {
        assertThatThrownBy(() -> RecordDatabase.read(address("postgres"), access -> 1))
            .isInstanceOf(StorageException.class).hasMessageContaining("There is no record in the database");
    }

    @Test
    void a_closed_record_says_that_the_service_stops() {
        LabBench lab = LabBench.in(ENGINE, folder);
        lab.close();
        lab.close();

        LabBench.assertRefused(() -> lab.laboratory().samples(SampleFilter.ALL, PageRequest.first(10)),
            Problem.SHUTTING_DOWN);
        LabBench.assertRefused(() -> lab.describe("A8"), Problem.SHUTTING_DOWN);
    }

    @Test
    void both_engines_have_the_same_forms() throws IOException {
        assertThat(forms("postgresql")).isEqualTo(forms("sqlite"));
    }

    private static List<String> forms(String engine) throws IOException {
        try (var files = Files.list(Path.of("src/main/resources/db/migration", engine))) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }
}
