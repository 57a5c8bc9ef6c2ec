package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.DriverManager;
import java.time.Instant;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.composition.AlloyCatalogue;
import surfeit.lab.Expectation;
import surfeit.lab.Laboratory;
import surfeit.lab.Occasion;
import surfeit.segregation.Interpreter;
import surfeit.spot.Sample;
import surfeit.storage.SqliteStore;

/** The commands backup, restore and check-audit. */
class BackupCommandTest {
    private static final Pattern HEAD = Pattern.compile("head (\\d+:[0-9a-f]{64})");

    @TempDir
    Path folder;
    private Path data;
    private Path file;

    @BeforeEach
    void record() {
        data = folder.resolve("data");
        file = folder.resolve("lab.backup");
        try (SqliteStore store = SqliteStore.open(data)) {
            describe(store, "A7");
            describe(store, "A8");
        }
    }

    private static void describe(SqliteStore store, String sample) {
        new Laboratory(store, AlloyCatalogue.packaged(), new Interpreter(), 0.003).describe(sample,
            Sample.of(Optional.of("ag-cu-eutectic"), Optional.empty()), Expectation.NONE,
            new Occasion("anna", Instant.EPOCH));
    }

    @Test
    void a_round_trip_tells_the_same_rows_and_the_same_end_of_the_audit() {
        CommandRun backup = CommandRun.of("backup", file, "--data", data);
        CommandRun restore = CommandRun.of("restore", file, "--data", folder.resolve("new"));

        assertThat(backup).returns(0, CommandRun::code).returns("", CommandRun::err);
        assertThat(backup.out()).contains("audit 2", "sample 2", "checked");
        assertThat(restore.code()).isZero();
        assertThat(restore.out().lines().skip(1)).isEqualTo(backup.out().lines().skip(1).toList());
        assertThat(head(CommandRun.of("check-audit", "--data", folder.resolve("new")))).isEqualTo(head(backup))
            .startsWith("2:");
    }

    @Test
    void commands_that_only_look_work_while_the_record_is_in_use_and_restore_does_not() {
        try (SqliteStore store = SqliteStore.open(data)) {
            describe(store, "A9");
            assertThat(CommandRun.of("backup", file, "--data", data).out()).contains("audit 3");
            assertThat(CommandRun.of("check-audit", "--data", data).out())
                .startsWith("The audit is intact: 3 rows, head 3:");
            CommandRun restore = CommandRun.of("restore", file, "--data", data);
            assertThat(restore.code()).isEqualTo(1);
            assertThat(restore.err()).contains("in use by another running program");
        }
    }

    @Test
    void what_cannot_be_done_is_refused_with_exit_code_one_and_what_to_do() {
        assertThat(CommandRun.of("backup", file, "--data", data).code()).isZero();
        assertRefused("choose another name", "backup", file, "--data", data);
        assertRefused("There is no record in the data folder", "backup", folder.resolve("b"), "--data",
            folder.resolve("none"));
        assertRefused("is not empty", "restore", file, "--data", data);
        assertRefused("There is no backup file", "restore", folder.resolve("none"), "--data", folder.resolve("new"));
        assertRefused("There is no record in the data folder", "check-audit", "--data", folder.resolve("none"));
        assertThat(folder.resolve("none")).doesNotExist();
    }

    @Test
    void a_row_that_was_changed_is_named() throws Exception {
        change("UPDATE audit SET who = 'ben' WHERE id = 1");

        assertRefused("The audit is broken at row 1: the hash of row 1 does not fit", "check-audit", "--data", data);
    }

    @Test
    void a_cut_tail_shows_against_a_head_that_was_noted_and_in_every_restored_record() throws Exception {
        String head = head(CommandRun.of("check-audit", "--data", data));
        CommandRun.of("backup", file, "--data", data);
        CommandRun.of("restore", file, "--data", folder.resolve("new"));
        change("DELETE FROM audit WHERE id = 2");

        assertRefused("The audit is broken at row 2: row 2 is missing", "check-audit", "--data", data);
        assertRefused("row 2 is missing; the audit once had 2", "check-audit", "--data", data, "--head", head);
        data = folder.resolve("new");
        assertThat(CommandRun.of("check-audit", "--data", data, "--head", head).code()).isZero();
        change("DELETE FROM audit WHERE id = 2");
        assertRefused("row 2 is missing; the audit once had 2", "check-audit", "--data", data);
    }

    @Test
    void a_head_that_is_none_is_wrong_usage() {
        assertThat(CommandRun.of("check-audit", "--data", data, "--head", "2")).returns(2, CommandRun::code)
            .satisfies(run -> assertThat(run.err())
                .contains("expected COUNT:HASH as check-audit prints it, got \"2\""));
    }

    private void change(String sql) throws Exception {
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + data.resolve("surfeit.db"));
             var statement = connection.createStatement()) {
            assertThat(statement.executeUpdate(sql)).isEqualTo(1);
        }
    }

    private static String head(CommandRun run) {
        Matcher matcher = HEAD.matcher(run.out());
        assertThat(matcher.find()).as(run.toString()).isTrue();
        return matcher.group(1);
    }

    private static void assertRefused(String why, Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.err()).contains(why);
        assertThat(run).returns(1, CommandRun::code).returns("", CommandRun::out);
    }

    @Test
    void a_backup_file_belongs_to_its_owner_only() throws Exception {
        CommandRun.of("backup", file, "--data", data);

        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file))).isEqualTo("rw-------");
        assertThat(Files.getPosixFilePermissions(data.resolve("surfeit.db")))
            .isEqualTo(Files.getPosixFilePermissions(file));
    }
}
