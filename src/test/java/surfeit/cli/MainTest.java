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

    @Test
    void what_a_table_is_compared_with_is_asked_for_in_the_words_of_the_command_line() {
        CommandRun nothing = CommandRun.of("interpret", "sample-spectra-results/ag-cu-braze-powder.csv");
        assertThat(nothing.code()).isEqualTo(2);
        assertThat(nothing.err()).contains("--alloy", "--nominal", "--sample").doesNotContain("/nominal:");
        CommandRun noUnit = CommandRun.of("interpret", "sample-spectra-results/ag-cu-braze-powder.csv", "--nominal", "Ag:60,Cu:40");
        assertThat(noUnit.code()).isEqualTo(2);
        assertThat(noUnit.err()).contains("--unit at%").doesNotContain("%25");
        CommandRun unknown = CommandRun.of("interpret", "sample-spectra-results/ag-cu-braze-powder.csv", "--alloy", "AgCu");
        assertThat(unknown.code()).isEqualTo(1);
        assertThat(unknown.err()).contains("got \"AgCu\"", "The command alloys lists the names");
    }

    @Test
    void a_refused_table_is_told_once_with_every_fault_and_what_to_type() {
        CommandRun refused = CommandRun.of("interpret", "src/test/resources/uploads/unit-missing.csv", "--alloy", "ag-cu-eutectic");
        assertThat(refused.code()).isEqualTo(1);
        assertThat(refused.err()).containsOnlyOnce("Expected the unit of Ag").containsOnlyOnce("Expected the unit of Cu")
            .contains("(unit-missing), 2 faults:", "line 1, column 2 (Ag)", "--unit at%");
    }

    @Test
    void an_answer_says_what_of_the_table_is_in_no_spot() {
        CommandRun answer = CommandRun.of("interpret", "src/test/resources/uploads/remark-column.csv", "--alloy", "ag-cu-eutectic");
        assertThat(answer.code()).isZero();
        assertThat(answer.out().replaceAll("\\s+", " ")).contains("note: Left out of the table: column 2 \"Remark\" (neither a "
            + "field nor an element); column 5 \"Operator\" (neither a field nor an element).");
    }
}
