package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/** Long tables, one small file each, with invented numbers. */
class LongUploadTest {

    @Test
    void a_long_table_gives_one_spot_for_the_rows_of_a_label() {
        Reading reading = Reading.ofFile("long.csv");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1-1", "P1-2");
        assertThat(reading.spots().get(0).values().keySet()).extracting(Element::symbol)
            .containsExactly("Ag", "Cu", "O");
        assertThat(((ReportedValue.Measured) reading.value(1, "Ag")).uncertainty()).hasValue(0.005);
        assertThat(reading.value(0, "O")).isEqualTo(new ReportedValue.BelowLimit(0.003, "<0.3"));
    }

    @Test
    void a_unit_column_gives_every_spot_its_own_unit() {
        Reading reading = Reading.ofFile("long-unit-column.csv");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).extracting(Spot::basis).containsExactly(Basis.MASS, Basis.ATOMIC);
    }

    @Test
    void one_bad_row_of_a_long_table_rejects_its_spot_and_no_other() {
        Reading reading = Reading.ofFile("long-one-row-bad.csv");

        assertThat(reading.fault().code()).isEqualTo(FaultCode.UNKNOWN_ELEMENT);
        assertThat(reading.fault().detail()).contains("nearest known: Cu");
        assertThat(reading.cell()).isEqualTo(new Place.Cell(5, 2, "element", "cu"));
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1-1", "P1-3");
        assertThat(reading.report().rejectedCount()).isEqualTo(1);
        assertThat(reading.rejectedTable()).isEqualTo("label;element;at%;problem\n"
            + "P1-2;Ag;61,9;another row of this spot, line 5, has a problem\n"
            + "P1-2;cu;38,1;\"unknown-element: Expected an element symbol such as Ag, found \"\"cu\"\"; nearest known:"
            + " Cu.\"\n");
    }

    @Test
    void rows_of_a_spot_that_come_back_further_down_refuse_the_long_table() {
        Reading reading = Reading.ofFile("long-not-adjacent.csv");

        assertThat(reading.report().faults()).extracting(Fault::code)
            .containsExactly(FaultCode.DUPLICATE_SPOT, FaultCode.DUPLICATE_SPOT);
        assertThat(reading.report().faults().get(0).place()).isEqualTo(new Place.Row(4));
        assertThat(reading.report().faults().get(0).detail()).contains("\"P1-1\"").contains("in line 2");
        assertThat(reading.report().tableRefused()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"long-merged-labels.csv", "long-merged-labels-totals.tsv"})
    void rows_without_a_label_below_one_with_it_are_of_the_same_spot(String file) {
        Reading reading = Reading.ofFile(file);

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.dialect().layout()).contains(CsvDialect.Layout.MERGED);
        assertThat(reading.spots()).extracting(spot -> spot.label() + "/" + spot.particle().orElseThrow())
            .containsExactly("Spot 1/P1", "Spot 2/P2");
        assertThat(reading.fraction(0, "Cu")).isEqualTo(0.788);
        assertThat(reading.fraction(1, "Ag")).isEqualTo(0.624);
        assertThat(reading.spots()).allMatch(spot -> spot.values().size() == 2);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', value = {
        "1;Ag;1\\n;Cu;99\\n;Ag;2\\n;Cu;98            | 4 | Ag again in a row without a label; write the label in every row",
        "1;Ag;1\\n;Cu;99\\n;Ag;1                       | 4 | Ag again in a row without a label",
        "1;Ag;1\\n1;Cu;99\\n;Ag;2\\n;Cu;98           | 4 | the label of the spot, found none",
        "1;Ag;1\\n;Cu;99\\n1;Zn;0                      | 4 | or in its first row alone, found both",
        "1;Ag;1\\n;Cu;99\\n\\n;Zn;2                  | 5 | the label of the spot, found none",
        "1;Ag;1\\n;Cu;99\\n;Total;100\\n;Zn;2        | 5 | the label of the spot, found none",
        ";Ag;1\\n;Cu;99                                  | 2 | the label of the spot, found none",
        "1;Ag;1\\n2;Ag;2\\n;Cu;99\\n;Cu;98           | 5 | spots of one row beside rows without a label",
        "1;Ag;1\\n2;Ag;2\\n;Cu;99                      | 4 | spots of one row beside rows without a label",
        "1;Ag;1\\n;Cu;99\\n2;Ag;2\\n                 | 4 | spots of one row beside rows without a label"})
    void rows_without_a_label_that_may_be_of_another_spot_are_refused(String rows, int line, String detail) {
        Reading reading = Reading.of("label;element;at%\n" + rows.replace("\\n", "\n"));

        Fault fault = reading.report().faults().get(0);
        assertThat(fault.detail()).contains(detail);
        assertThat(fault.place() instanceof Place.Cell cell ? cell.line() : ((Place.Row) fault.place()).line())
            .isEqualTo(line);
    }

    @Test
    void rejected_rows_without_a_label_can_be_mended_and_sent() {
        Reading reading = Reading.of("label;element;at%\n1;Ag;1\n;Cu;x\n2;Ag;2\n;Cu;98\n");

        assertThat(reading.spots()).extracting(Spot::label).containsExactly("2");
        Reading mended = Reading.of(reading.rejectedTable().replace(";x;", ";99;"));
        assertThat(mended.report().faults()).isEmpty();
        assertThat(mended.fraction(0, "Cu")).isEqualTo(0.99);
    }

    @Test
    void summary_rows_of_a_long_table_are_left_out() {
        Reading reading = Reading.ofFile("long-foot.csv");

        assertThat(reading.spots()).hasSize(1);
        assertThat(reading.report().leftOut()).extracting(LeftOut::reason).containsExactly("summary row", "summary"
            + " row");
    }

    @Test
    void rows_below_a_label_that_add_up_to_two_spots_are_refused() {
        Reading reading = Reading.of("label;element;at%\nP1;Ag;60\n;Cu;40\n;Sn;58\n;Bi;42\nP2;Ag;61\n;Cu;61\n");

        assertThat(reading.fault().detail()).contains("200 % in all below \"P1\", as of two; write the label in every row");
        assertThat(reading.rejected()).hasSize(1);
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P2");
    }
}
