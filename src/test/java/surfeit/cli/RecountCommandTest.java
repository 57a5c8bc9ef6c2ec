package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.storage.LabBench;

/** The command recount. */
class RecountCommandTest {
    @TempDir
    Path data;

    @BeforeEach
    void record() {
        try (LabBench bench = LabBench.in(data)) {
            bench.describe("A7").post("A7", LabBench.spots("P", 300));
            bench.describe("A8").post("A8", LabBench.spots("P", 5));
        }
    }

    private void execute(String statement) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + data.resolve("surfeit.db"));
             Statement open = connection.createStatement()) {
            open.execute(statement);
        }
    }

    @Test
    void equal_sums_are_told_with_their_counts() {
        CommandRun run = CommandRun.of("recount", "--data", data);

        assertThat(run).returns(0, CommandRun::code).returns("", CommandRun::err);
        assertThat(run.out()).containsPattern("Sample A7 by feature: 300 spots recounted, \\d\\d+ sums compared, all equal.")
            .contains("Sample A7 by particle: 300", "Sample A7 by sample: 300", "Nothing differs.").doesNotContain("A8");
        assertThat(CommandRun.of("recount", "--data", data, "--sample", "A8").out()).contains("No sums are kept.");
    }

    @Test
    void a_spot_changed_behind_the_back_of_the_program_is_found_and_nothing_is_repaired_unasked() throws SQLException {
        execute("UPDATE spot_revision SET payload = (SELECT payload FROM spot_revision WHERE spot = 9) WHERE spot = 1");

        for (int i = 0; i < 2; i++) {
            CommandRun run = CommandRun.of("recount", "--data", data);
            assertThat(run.code()).isEqualTo(1);
            assertThat(run.err()).contains("Sample A7 by feature: mean of group \"dark patch\", particle \"P1\" is kept as ")
                .contains("3 of 3 kept sums are not right", "check-audit");
        }
        assertThat(CommandRun.of("recount", "--data", data, "--renew")).returns(1, CommandRun::code);
        assertThat(CommandRun.of("recount", "--data", data)).returns(0, CommandRun::code);
    }

    @Test
    void damaged_sums_are_named() throws SQLException {
        execute("UPDATE kept_sums SET sums = x'01' WHERE grouped_by = 'sample'");

        CommandRun run = CommandRun.of("recount", "--data", data);

        assertThat(run.code()).isEqualTo(1);
        assertThat(run.err()).contains("Sample A7 by sample: damaged", "1 of 3 kept sums are not right");
    }

    @Test
    void sums_of_another_setting_are_not_used_and_said_to_be_so() {
        CommandRun run = CommandRun.of("recount", "--data", data, "--detection-limit-mass-percent", "0.5");

        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("Sample A7 by feature: not used: made with another setting");
    }

    @Test
    void an_unknown_sample_is_refused() {
        assertThat(CommandRun.of("recount", "--data", data, "--sample", "none")).returns(1, CommandRun::code)
            .satisfies(run -> assertThat(run.err()).contains("There is no sample \"none\"."));
    }
}
