package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Every limit refuses by name, and what is beyond it is never read in full. */
class LimitsTest {
    private static final IntakeLimits SMALL = new IntakeLimits(3, 2, 10, 50, 8);
    private static final IntakeOptions OPTIONS = IntakeOptions.DEFAULT.withLimits(SMALL);

    @Test
    void more_rows_than_allowed_refuse_the_table() {
        Reading reading = Reading.of("label;Ag at%\na;1\nb;2\nc;3\nd;4\n", OPTIONS);

        assertThat(reading.fault().code()).isEqualTo(FaultCode.UPLOAD_TOO_LARGE);
        assertThat(reading.fault().setting()).contains("upload-rows-max");
        assertThat(reading.fault().detail()).isEqualTo("Expected at most 3 rows or spots, found more.");
        assertThat(reading.fault().place()).isEqualTo(new Place.Row(5));
        assertThat(reading.report().tableRefused()).isTrue();
    }

    @Test
    void more_elements_than_allowed_are_refused_in_both_forms() {
        Reading wide = Reading.of("label;Ag at%;Cu at%;Zn at%\na;1;2;3\n", OPTIONS);
        Reading inLongForm = Reading.of("label;element;at%\na;Ag;1\na;Cu;2\na;Zn;3\n", OPTIONS);

        assertThat(wide.fault().setting()).contains("elements-per-spot-max");
        assertThat(wide.report().tableRefused()).isTrue();
        assertThat(inLongForm.fault().setting()).contains("elements-per-spot-max");
        assertThat(inLongForm.cell()).isEqualTo(new Place.Cell(4, 2, "element", "Zn"));
    }

    @Test
    void a_name_that_is_too_long_is_refused_where_it_stands() {
        Reading reading = Reading.of("label;Ag at%\n12345678901;1\n", OPTIONS);

        assertThat(reading.fault().code()).isEqualTo(FaultCode.NAME_INVALID);
        assertThat(reading.fault().setting()).contains("label-length-max");
        assertThat(reading.cell().column()).isEqualTo(1);
    }

    @Test
    void a_cell_that_is_too_long_ends_the_reading() {
        Reading reading = Reading.of("label;Ag at%;Remark\na;1;" + "x".repeat(51) + "\n", OPTIONS);

        assertThat(reading.fault().setting()).contains("cell-length-max");
        assertThat(reading.cell().line()).isEqualTo(2);
        assertThat(reading.cell().column()).isEqualTo(3);
    }

    @Test
    void a_cell_longer_than_any_buffer_ends_the_reading_too() {
        Reading reading = Reading.of("label;Ag at%;Remark\na;1;\"" + "x\n".repeat(3_000_000));

        assertThat(reading.fault().code()).isEqualTo(FaultCode.UPLOAD_TOO_LARGE);
        assertThat(reading.fault().setting()).contains("cell-length-max");
        assertThat(reading.cell().line()).isEqualTo(2);
    }

    @Test
    void more_columns_than_allowed_end_the_reading() {
        Reading reading = Reading.of("label;Ag at%" + ";x".repeat(7) + "\na;1\n", OPTIONS);

        assertThat(reading.fault().setting()).contains("columns-max");
    }

    @Test
    void the_first_hundred_faults_are_kept_and_all_are_counted() {
        String rows = IntStream.range(0, 250).mapToObj(i -> "P" + i + ";x").collect(Collectors.joining("\n"));
        Reading reading = Reading.of("label;Ag at%\n" + rows);

        assertThat(reading.report().faults()).hasSize(100);
        assertThat(reading.report().faultCount()).isEqualTo(250);
        assertThat(reading.report().rejectedCount()).isEqualTo(250);
        assertThat(reading.rejected()).hasSize(250);
    }

    @Test
    void a_fault_repeats_no_more_of_a_cell_than_a_line() {
        Reading reading = Reading.of("label;Ag at%\nP1;" + "9".repeat(5000) + "\n");

        assertThat(reading.cell().value()).hasSize(Place.SHOWN_MAX + 1);
        assertThat(reading.fault().detail()).isEqualTo("Expected a number of at most 40 characters, found 5000.");
    }

    @Test
    void many_rows_of_one_bad_long_spot_are_handed_back_as_they_come() {
        String rows = IntStream.range(0, 2500).mapToObj(i -> "P1;Ag;" + i % 90).collect(Collectors.joining("\n"));
        Reading reading = Reading.of("label;element;at%\n" + rows + "\nP2;Ag;1\n");

        assertThat(reading.report().rejectedCount()).isEqualTo(1);
        assertThat(reading.spots()).hasSize(1);
        assertThat(reading.rejectedTable().lines()).hasSizeGreaterThan(2400);
        assertThat(reading.rejected()).allMatch(spot -> spot.rows().size() <= 1000);
    }
}
