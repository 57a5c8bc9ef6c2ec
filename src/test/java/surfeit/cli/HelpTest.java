package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whoever asks a command for help sees what it takes, and nothing that has no effect there. */
class HelpTest {

    @ParameterizedTest
    @ValueSource(strings = {"serve", "check-config"})
    void a_command_that_needs_all_settings_lists_all(String command) {
        List<String> flags = Arrays.stream(Setting.values()).filter(setting -> setting != Setting.DATABASE_PASSWORD)
            .map(setting -> "--" + setting.key()).toList();
        assertThat(flags(CommandRun.of(command, "--help"))).containsAll(flags).doesNotContain("--database-password");
    }

    @ParameterizedTest
    @CsvSource({
        "interpret, --alloy, --detection-limit-mass-percent",
        "import, --sample, --data",
        "recount, --sample, --data",
        "check-audit, --head, --database-url",
        "demo, --once, --port"})
    void what_a_command_has_of_its_own_comes_before_the_settings(String command, String own, String setting) {
        assertThat(flags(CommandRun.of(command, "--help"))).containsSubsequence(own, "--help", setting, "--config");
    }

    @ParameterizedTest
    @CsvSource({
        "interpret, --port, --data",
        "backup, --port, --columns-max",
        "health, --data, --requests-per-second-max",
        "report, --host, --upload-rows-max",
        "demo, --data, --database-url"})
    void a_setting_without_effect_is_neither_listed_nor_taken(String command, String one, String other) {
        assertThat(flags(CommandRun.of(command, "--help"))).doesNotContain(one, other);
        CommandRun wrong = CommandRun.of(command, "anything", one, "1");
        assertThat(wrong.code()).isEqualTo(2);
        assertThat(wrong.err()).contains(one);
    }

    @ParameterizedTest
    @ValueSource(strings = {"new", "list", "revoke"})
    void commands_below_a_command_take_the_place_of_the_record(String command) {
        assertThat(flags(CommandRun.of("token", command, "--help"))).contains("--data", "--database-url")
            .doesNotContain("--port");
    }

    @Test
    void the_demo_says_that_it_takes_a_free_port() {
        assertThat(CommandRun.of("demo", "--help").out()).contains("0 takes a free one (default 0)");
        assertThat(CommandRun.of("serve", "--help").out()).contains("0 takes a free one (default 8420)");
    }

    @Test
    void wrong_usage_is_told_first_and_not_pushed_off_the_screen_by_the_whole_help() {
        CommandRun wrong = CommandRun.of("import", "spots.csv");
        assertThat(wrong.err().lines()).first().asString().contains("--sample");
        assertThat(wrong.err().lines()).hasSizeLessThan(10).last().isEqualTo("More: surfeit import --help");
        assertThat(CommandRun.of("interprt").err()).contains("surfeit interpret");
    }

    /** The flags in the left column, in the order of the help. */
    private static List<String> flags(CommandRun help) {
        assertThat(help.code()).isZero();
        Stream<String> left = help.out().lines().map(String::strip).map(line -> line.replaceFirst("^-[hV], ", ""))
            .filter(line -> line.startsWith("--"));
        return left.map(line -> line.split("[=\\[ ]", 2)[0]).toList();
    }
}
