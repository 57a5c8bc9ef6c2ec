package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.spot.Spot;

/** What is wrong with real tables and where, one small file each, with invented numbers. */
class RefusedUploadTest {

    @Test
    void a_mean_with_spots_below_it_is_a_fault_and_no_spot() {
        Reading reading = Reading.ofFile("mean-between-spots.csv");

        assertThat(reading.cell()).isEqualTo(new Place.Cell(3, 1, "label", "Mean"));
        assertThat(reading.fault().code()).isEqualTo(FaultCode.UNREADABLE_TABLE);
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1-1", "P2-1");
        assertThat(reading.report().leftOut()).containsExactly(new LeftOut.Row(5, "summary row", "Mean"));
        assertThat(reading.report().tableRefused()).isFalse();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "missing-header.csv          | unreadable-table | 1 | Expected a header",
        "spots-above-header.csv      | unreadable-table | 1 | line 3 looks like the header, delete the lines above it",
        "one-spot-without-label.csv  | unreadable-table | 1 | found \"Element at%\"; name such a column \"label\", or add it:"
        + " where all rows are of one spot, with its label in each",
        "a-table-a-spot.csv          | unreadable-table | 1 | each spot seems to be a table of its own",
        "label-missing.csv           | unreadable-table | 1 | found \"Sample Ag at% Cu at%\"; name that column \"label\"",
        "two-labels-of-last-resort.csv | unreadable-table | 1 | Expected one column for label, found column 1 and column 2",
        "columns-parted-by-blanks.txt | unreadable-table | 1 | save it with tabs, semicolons or commas between them",
        "one-spot-below-its-name.tsv | unreadable-table | 1 | line 2 begins a table of one spot that does not say its label",
        "elements-in-german.csv      | unreadable-table | 1 | write the elements as symbols, such as Ag for \"Silber\"",
        "two-tables.csv              | unreadable-table | 6 | second header",
        "two-tables-other-width.csv  | unreadable-table | 6 | second header",
        "column-twice.csv            | unreadable-table | 1 | Expected one column for Ag, found column 2 and column 4",
        "unit-missing.csv            | unit-missing     | 1 | Expected the unit of Ag, at% or wt%",
        "mixed-units.csv             | unit-missing     | 1 | Expected one unit for all elements, found at% and for Cu"
        + " wt%",
        "both-units.csv              | unit-missing     | 1 | state the unit to take",
        "open-quote.csv              | unreadable-table | 2 | Expected a closing quote",
        "quote-inside.csv            | unreadable-table | 3 | a quote inside quotes is written twice",
        "workbook-renamed.csv        | unreadable-table | 1 | found a workbook or zip archive",
        "empty.csv                   | unreadable-table | 1 | empty table",
        "header-only.csv             | unreadable-table | 1 | at least one spot",
        "unknown-element.csv         | unknown-element  | 1 | Expected an element symbol beside the unit, found"
        + " \"Xx\""})
    void a_table_that_cannot_be_understood_is_refused_as_a_whole(String file, String code, long line, String detail) {
        Reading reading = Reading.ofFile(file);

        assertThat(reading.report().tableRefused()).isTrue();
        Fault fault = reading.report().faults().get(0);
        assertThat(fault.code().text()).isEqualTo(code);
        assertThat(fault.detail()).contains(detail);
        assertThat(fault.place() instanceof Place.Cell cell ? cell.line() : ((Place.Row) fault.place()).line())
            .isEqualTo(line);
    }

    @Test
    void spots_counted_anew_on_each_particle_are_refused_with_a_label_to_give_them() {
        Fault fault = Reading.of("label;particle;Ag at%\n1;P1;62,4\n1;P2;61,2\n").fault();

        assertThat(fault.code()).isEqualTo(FaultCode.DUPLICATE_SPOT);
        assertThat(fault.detail()).contains("such as \"P2-1\"");
        assertThat(Reading.of("label;particle;Ag at%\nP1-1;P1;62,4\nP1-1;P1;61,2\n").fault().detail())
            .endsWith("again with other values than in line 2.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"62. Apr", "Jan 62", "12.03.2026", "21. M\u00E4r"})
    void a_number_that_a_spreadsheet_made_a_date_of_is_refused_as_that(String cell) {
        assertThat(Reading.of("label;Ag at%\n1;21,2\n2;" + cell + "\n").fault().detail())
            .contains("a date; a spreadsheet may have made it of a number");
        assertThat(Reading.of("label;Ag at%\n1;12 cps\n").fault().detail()).doesNotContain("date");
    }

    @Test
    void a_note_without_a_blank_line_above_is_refused_with_what_to_do() {
        assertThat(Reading.of("label;Ag at%\n1;21,2\nTilted by 20 degrees;\n").fault().detail())
            .endsWith("if the row is a note, leave a line blank above it.");
    }

    @Test
    void a_second_table_that_begins_with_nothing_is_told() {
        assertThat(Reading.of(";Ag wt%;Cu wt%\n1;21,2;78,8\n\n;Ag at%;Cu at%\n1;14;86\n").report().faults())
            .extracting(Fault::detail).anyMatch(detail -> detail.contains("found a second header"));
    }

    @ParameterizedTest
    @CsvSource({"62.4\u00B10.5", "62.4 +- 0.5", "62.4(5)"})
    void a_value_with_its_uncertainty_in_one_cell_is_refused_with_where_to_put_it(String cell) {
        assertThat(Reading.of("label;Ag at%\n1;" + cell + "\n").fault().detail()).contains("\"Ag at% u\"");
    }

    @Test
    void a_row_with_more_or_fewer_columns_than_the_header_is_refused() {
        Reading reading = Reading.ofFile("unequal-columns.csv");

        assertThat(reading.report().faults()).extracting(Fault::place).containsExactly(
            new Place.Cell(3, 3, "Cu at%", ""), new Place.Cell(4, 4, "", "1,0"));
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1-1");
    }

    @Test
    void empty_columns_at_the_end_of_rows_do_no_harm_and_full_ones_are_refused() {
        assertThat(Reading.ofFile("trailing-delimiters-rows-only.csv").spots()).hasSize(2);
        assertThat(Reading.ofFile("value-without-header.csv").cell()).isEqualTo(new Place.Cell(2, 4, "", "0,5"));
    }

    @Test
    void blank_lines_count_as_lines_and_are_no_rows() {
        Reading reading = Reading.ofFile("blank-lines.csv");

        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1-1");
        assertThat(reading.cell()).isEqualTo(new Place.Cell(8, 3, "Cu at%", "38,10x"));
    }

    @Test
    void cells_of_several_lines_keep_the_line_count() {
        Reading reading = Reading.ofFile("quoted-cells.csv");

        assertThat(reading.spots()).singleElement().satisfies(spot -> assertThat(spot.feature())
            .contains("dark patch, left"));
        assertThat(reading.cell()).isEqualTo(new Place.Cell(5, 4, "Ag at%", "x"));
    }

    @Test
    void a_unit_beside_no_element_names_the_nearest_one() {
        Reading reading = Reading.ofFile("unknown-element.csv");

        assertThat(reading.report().faults()).extracting(Fault::code)
            .containsExactly(FaultCode.UNKNOWN_ELEMENT, FaultCode.UNKNOWN_ELEMENT);
        assertThat(reading.report().faults().get(1).detail()).contains("\"CU\"; nearest known: Cu.");
        assertThat(reading.report().faults().get(1).place()).isEqualTo(new Place.Cell(1, 4, "CU at%", "CU at%"));
    }

    @Test
    void all_faults_of_a_table_are_told_at_once() {
        Reading reading = Reading.ofFile("out-of-range.csv");

        assertThat(reading.report().faults()).extracting(Fault::code).containsOnly(FaultCode.VALUE_OUT_OF_RANGE);
        assertThat(reading.report().faults()).extracting(fault -> ((Place.Cell) fault.place()).value())
            .containsExactly("6240", "-11", "NaN", "0x26");
        assertThat(reading.report().rejectedCount()).isEqualTo(3);
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1-4");
    }

    @Test
    void the_same_spot_again_is_ignored_with_the_same_values_and_a_fault_with_others() {
        Reading reading = Reading.ofFile("same-spot-twice.csv");

        assertThat(reading.spots()).hasSize(2);
        assertThat(reading.report().repeatedCount()).isEqualTo(1);
        assertThat(reading.report().leftOut()).containsExactly(
            new LeftOut.Row(4, "the same spot with the same values as in line 2", "P1-1"));
        assertThat(reading.fault().code()).isEqualTo(FaultCode.DUPLICATE_SPOT);
        assertThat(reading.fault().place()).isEqualTo(new Place.Row(5));
        assertThat(reading.report().tableRefused()).isFalse();
    }

    @Test
    void local_times_without_a_zone_are_refused() {
        Reading reading = Reading.ofFile("local-times.csv");

        assertThat(reading.report().faults()).extracting(Fault::code)
            .containsExactly(FaultCode.TIME_WITHOUT_ZONE, FaultCode.TIME_WITHOUT_ZONE);
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1-3");
    }

    @Test
    void rejected_rows_come_back_as_the_same_table_with_their_problem_and_without_formulas() {
        Reading reading = Reading.ofFile("formula-cells.csv");

        assertThat(reading.spots()).extracting(Spot::label).containsExactly("=2+5");
        assertThat(reading.rejectedTable()).isEqualTo("label;Remark;Ag at%;Cu at%;problem\n'-P1;-5;-99;37,6;"
            + "\"value-out-of-range: Expected a value from -10 to 150 %, found \"\"-99\"\".\"\n");
        assertThat(Reading.of(reading.rejectedTable().replace("-99", "62,4")).spots()).extracting(Spot::label)
            .containsExactly("-P1");
    }
}
