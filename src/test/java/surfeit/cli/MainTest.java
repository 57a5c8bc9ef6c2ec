package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class MainTest {

    @Test
    void wrong_usage_has_exit_code_two_whatever_is_wrong() {
        assertThat(CommandRun.of("no-such-command").code()).isEqualTo(2);
        assertThat(CommandRun.of().code()).isEqualTo(2);
        assertThat(CommandRun.of("serve", "--no-such-flag").code()).isEqualTo(2);
        assertThat(CommandRun.of("backup").code()).isEqualTo(2);
        assertThat(CommandRun.of("check-config", "--port", "x").code()).isEqualTo(2);
        assertThat(CommandRun.of("version").code()).isZero();
    }

    @Test
    void the_alloys_that_can_be_named_are_listed_by_element() {
        assertThat(CommandRun.of("alloys").out().lines()).hasSizeGreaterThan(30);
        assertThat(CommandRun.of("alloys", "Cu", "Ag").out().lines())
            .anyMatch(line -> line.matches("ag-cu-eutectic +779\\.1 C, eutectic +Ag 59\\.75, Cu 40\\.25"))
            .noneMatch(line -> line.startsWith("sn-bi") || line.startsWith("bi58sn42"));
        assertThat(CommandRun.of("alloys", "Ag", "Al").out()).contains("No alloy of the catalogue holds Ag, Al");
        CommandRun wrong = CommandRun.of("alloys", "Xy");
        assertThat(wrong.code()).isEqualTo(2);
        assertThat(wrong.err()).contains("\"Xy\"");
    }

    @Test
    void an_unknown_word_beside_a_file_is_refused_with_the_nearest_known_ones() {
        CommandRun wrong = CommandRun.of("interpret", "sample-spectra-results/ag-cu-braze-powder.csv", "--alloy", "ag-cu-eutectic",
            "--with", "acuracy_class=standardless");
        assertThat(wrong.code()).isEqualTo(1);
        assertThat(wrong.err()).contains("\"acuracy_class\" is not a key that can be stated beside a file")
            .contains("accuracy_class");
    }
}
