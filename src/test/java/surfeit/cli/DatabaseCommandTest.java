package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.postgresql.PostgresServer;
import surfeit.storage.LabBench;
import surfeit.storage.RecordEngine;

/** The commands on a record in a database. */
class DatabaseCommandTest {
    @TempDir
    Path folder;
    private String url;

    @BeforeEach
    void name() {
        url = RecordEngine.PostgresDatabases.of(folder).url() + "?user=" + PostgresServer.USER + "&password="
            + PostgresServer.PASSWORD.replace(" ", "%20");
    }

    @Test
    void import_report_token_and_check_audit_work_on_the_database() throws IOException {
        try (LabBench bench = LabBench.in(RecordEngine.POSTGRESQL, folder)) {
            bench.describe("lot-7");
        }
        Path table = Files.writeString(folder.resolve("my-spots.csv"),
            "label,feature,particle,Ag at%,Cu at%\n1,patch,P1,20.1,79.9\n2,patch,P2,19.6,80.4\n3,patch,P3,21.3,78.7\n");

        CommandRun imported = CommandRun.of("import", table, "--sample", "lot-7", "--database-url", url);
        CommandRun report = CommandRun.of("report", "lot-7", "--database-url", url);
        CommandRun token = CommandRun.of("token", "new", "--name", "anna", "--scopes", "read", "--database-url", url);
        CommandRun tokens = CommandRun.of("token", "list", "--database-url", url);
        CommandRun audit = CommandRun.of("check-audit", "--database-url", url);

        assertThat(imported.out()).startsWith("Recorded 3");
        assertThat(report.out()).contains("Cu").contains("enriched");
        assertThat(token.out()).startsWith("lab_");
        assertThat(tokens.out()).contains("anna");
        assertThat(audit.out()).startsWith("The audit is intact: 3 rows");
        assertThat(folder.resolve("surfeit.db")).doesNotExist();
    }

    @Test
    void check_config_shows_the_address_without_its_password() {
        assertThat(CommandRun.of("check-config", "--database-url", url).out())
            .contains("database-url = jdbc:postgresql://").contains("password=***").doesNotContain("tests");
    }

    @Test
    void a_restore_says_that_it_works_on_a_folder() {
        CommandRun restored = CommandRun.of("restore", folder.resolve("x"), "--database-url", url);
        assertThat(restored.code()).isEqualTo(Main.WRONG_USAGE);
        assertThat(restored.err()).contains("restore works on a data folder, and database-url names a database");
    }

    @Test
    void a_database_is_backed_up_into_a_file_and_moved_into_a_folder() {
        try (LabBench bench = LabBench.in(RecordEngine.POSTGRESQL, folder)) {
            bench.describe("lot-7").post("lot-7", LabBench.spots("P", 5));
        }
        Path data = folder.resolve("data");

        CommandRun backup = CommandRun.of("backup", folder.resolve("lab.backup"), "--database-url", url);
        CommandRun moved = CommandRun.of("move", "--to", "folder", "--data", data, "--database-url", url);

        assertThat(backup.out()).startsWith("Backup of jdbc:postgresql://").contains("spot 5").doesNotContain("password");
        assertThat(moved.out()).startsWith("Moved the record of jdbc:postgresql://").contains(" to " + data + ":", "spot 5",
            "audit   2 rows", "without database-url");
        assertThat(CommandRun.of("check-audit", "--data", data).code()).isZero();
        assertThat(CommandRun.of("move", "--to", "database", "--data", data, "--database-url", url).err())
            .contains("is not empty");
        assertThat(CommandRun.of("move", "--to", "database", "--data", data).err()).contains("database-url, which is not set");
    }

    @Test
    void another_kind_of_address_is_refused_before_anything_is_done() {
        CommandRun refused = CommandRun.of("check-audit", "--database-url", "jdbc:sqlite:x?password=hidden");
        assertThat(refused.code()).isEqualTo(Main.WRONG_USAGE);
        assertThat(refused.err()).contains("expected an address like jdbc:postgresql://").doesNotContain("hidden");
    }

    @Test
    void the_password_is_no_flag() {
        assertThat(CommandRun.of("check-config", "--database-password", "x").err()).contains("Unknown option");
    }

    @Test
    void a_secret_may_stand_in_a_file_and_is_never_shown() throws IOException {
        Path file = Files.writeString(folder.resolve("secret"), "hidden\n");
        Settings settings = Settings.read(Map.of(), Map.of("SURFEIT_DATABASE_PASSWORD_FILE", file.toString(),
            "SURFEIT_DATABASE_URL", "jdbc:postgresql://db/lab"), Optional.empty());
        assertThat(settings.stated(Setting.DATABASE_PASSWORD)).hasValue("hidden");
        assertThat(settings.shown(Setting.DATABASE_PASSWORD)).isEqualTo("***");
        assertThat(settings.from(Setting.DATABASE_PASSWORD)).contains(file.toString());
        assertThat(settings.stated(Setting.DATABASE_USER)).isEmpty();
    }

    @Test
    void a_secret_said_twice_or_in_a_missing_file_is_a_fault() {
        assertThatThrownBy(() -> Settings.read(Map.of(), Map.of("SURFEIT_DATABASE_PASSWORD_FILE", "/none/such",
            "SURFEIT_DATABASE_URL", "jdbc:postgresql://db/lab", "SURFEIT_DATABASE_URL_FILE", "/none/such",
            "SURFEIT_PORT_FILE", "/none/such"), Optional.empty())).isInstanceOf(SettingsException.class)
            .hasMessageContaining("the file /none/such of SURFEIT_DATABASE_PASSWORD_FILE cannot be read")
            .hasMessageContaining("sets both SURFEIT_DATABASE_URL and SURFEIT_DATABASE_URL_FILE; set one")
            .hasMessageContaining("SURFEIT_PORT_FILE, which is no setting");
    }
}
