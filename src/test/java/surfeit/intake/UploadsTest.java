package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.composition.Basis;
import surfeit.spot.Counts;
import surfeit.spot.Position;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/** What real tables say of spots, one small file each, with invented numbers. */
class UploadsTest {

    @Test
    void every_field_of_a_spot_is_read_under_forgiving_headers() {
        Reading reading = Reading.ofFile("all-fields.csv");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.report().leftOut()).isEmpty();
        Spot spot = reading.spots().get(0);
        assertThat(spot.session()).contains("2026-11-20-a");
        assertThat(spot.acquiredTime()).contains(OffsetDateTime.parse("2026-11-20T14:03:00+01:00"));
        assertThat(spot.conditions().beamEnergyKev()).hasValue(15);
        assertThat(spot.conditions().liveTimeS()).hasValue(60);
        assertThat(spot.conditions().featureSizeUm()).hasValue(3);
        assertThat(spot.conditions().rawTotal()).hasValue(0.974);
        assertThat(spot.conditions().position()).contains(Position.AWAY_FROM_DETECTOR);
        assertThat(spot.conditions().tiltDeg()).hasValue(20);
        assertThat(spot.isReference()).isFalse();
        ReportedValue.Measured silver = (ReportedValue.Measured) reading.value(0, "Ag");
        assertThat(silver.uncertainty()).hasValue(0.004);
        assertThat(silver.counts()).contains(new Counts(10400, 1200));
        assertThat(reading.value(0, "Zn")).isEqualTo(new ReportedValue.NotDetected(OptionalDouble.of(0.0025), "n.d."));
    }

    @Test
    void number_limit_not_detected_nothing_and_zero_stay_apart() {
        Reading reading = Reading.ofFile("not-detected.csv");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.value(0, "Fe")).isEqualTo(new ReportedValue.NotDetected(OptionalDouble.empty(), "n.d."));
        assertThat(reading.value(0, "Cu")).isEqualTo(new ReportedValue.BelowLimit(0.003, "<0.3"));
        assertThat(reading.value(0, "Zn")).isEqualTo(new ReportedValue.NotReported());
        assertThat(reading.value(1, "Fe")).isEqualTo(ReportedValue.Measured.of(0, "0"));
        assertThat(reading.value(1, "Cu")).isEqualTo(new ReportedValue.NotDetected(OptionalDouble.empty(), "ND"));
        assertThat(reading.value(1, "Zn")).isEqualTo(new ReportedValue.NotReported());
        assertThat(reading.value(2, "Fe")).isEqualTo(ReportedValue.Measured.of(-0.0002, "-0.02"));
        assertThat(reading.value(2, "Cu")).isEqualTo(new ReportedValue.BelowLimit(0.0025, "< 0.25"));
        assertThat(reading.value(2, "Zn")).isEqualTo(new ReportedValue.NotDetected(OptionalDouble.empty(), "<LOD"));
    }

    @ParameterizedTest
    @CsvSource({"foot-english.csv, 5 6 7 8, Mean Std. deviation Max. Min.",
        "foot-german.csv, 4 5 6 7, Mittelwert Sigma Standardabweichung Summe"})
    void summary_rows_at_the_foot_are_left_out_and_listed(String file, String lines, String labels) {
        Reading reading = Reading.ofFile(file);

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).hasSize(2);
        List<LeftOut.Row> rows = reading.report().leftOut().stream().map(LeftOut.Row.class::cast).toList();
        assertThat(rows).allMatch(row -> row.reason().equals("summary row"));
        assertThat(String.join(" ", rows.stream().map(row -> String.valueOf(row.line())).toList())).isEqualTo(lines);
        assertThat(String.join(" ", rows.stream().map(LeftOut.Row::label).toList())).isEqualTo(labels);
    }

    @ParameterizedTest
    @ValueSource(strings = {"\u00D8", "Mean (n=2)", "Mittelwert, n = 2", "SD [n=2]", "Differenz", "ratio"})
    void a_summary_row_may_be_named_by_a_sign_or_with_its_number_of_spots(String name) {
        Reading reading = Reading.of("label;Ag at%;Cu at%\n1;60;40\n2;61;39\n" + name + ";60.5;39.5\n");

        assertThat(reading.spots()).extracting(Spot::label).containsExactly("1", "2");
        assertThat(reading.report().leftOut()).containsExactly(new LeftOut.Row(4, "summary row", name));
    }

    @ParameterizedTest
    @ValueSource(strings = {"P1-1 error", "P1-1 (1\u03C3)", "P1-1_err", "u(P1-1)", "\u00B1", "Fehler", "P1-1 +/-"})
    void a_row_of_uncertainties_below_a_spot_is_no_spot(String label) {
        Reading reading = Reading.of("label;Ag at%;Cu at%\nP1-1;60;40\n" + label + ";0.5;0.4\nP1-2;61;39\n");

        assertThat(reading.fault().detail()).contains("found \"" + label + "\" below \"P1-1\"");
        assertThat(reading.rejected()).hasSize(1);
    }

    @Test
    void labels_that_hold_a_word_of_uncertainties_for_another_reason_are_spots() {
        Reading reading = Reading.of("label;Ag at%;Cu at%\nP1;60;40\nsigma 1;61;39\nP1 line 2;62;38\nP1-1;63;37\nStd;64;36\n"
            + "P2 error;65;35\nP3;60;40\nP3 background;66;34\n");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).hasSize(8);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"All values in weight% | wt%", "Angaben in Atom-% | at%", "Gew.-% | wt%"})
    void a_title_that_says_nothing_but_the_unit_gives_it_where_no_header_does(String title, String unit) {
        Reading reading = Reading.of(title + "\n\nSpot\tAg\tCu\n1\t21,2\t78,8\n2\t62,4\tx\n");

        assertThat(reading.dialect().unit().orElseThrow().unit()).isEqualTo(unit);
        assertThat(reading.fraction(0, "Ag")).isEqualTo(0.212);
        assertThat(reading.report().leftOut()).containsExactly(new LeftOut.Row(1, "unit of the table", title));
        assertThat(reading.rejectedTable()).startsWith("Spot\tAg " + unit + "\tCu " + unit + "\tproblem\n");
        assertThat(Reading.of("Ag-28Cu (" + unit + ")\nSpot;Ag;Cu\n1;2;98\n").report().faults())
            .extracting(Fault::code).containsOnly(FaultCode.UNIT_MISSING);
    }

    @ParameterizedTest
    @CsvSource({"particle-in-merged-cells.csv, 1, Partikel, particle", "feature-in-merged-cells.csv, 2, Feature, feature"})
    void a_field_that_some_spots_lack_is_told(String file, int column, String name, String field) {
        Reading reading = Reading.ofFile(file);

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.report().leftOut()).containsExactly(new LeftOut.Column(column, name,
            "blank for 2 of 4 spots, which then name no " + field + "; fill merged cells in"));
    }

    @Test
    void a_session_or_a_beam_energy_that_merged_cells_leave_to_the_first_spot_is_told() {
        Reading reading = Reading.of("session;kV;label;Ag at%;Cu at%\nmonday;5;1;60;40\n;;2;61;39\ntuesday;15;3;62;38\n");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.report().leftOut()).containsExactly(
            new LeftOut.Column(1, "session", "blank for 1 of 3 spots, which then name no session; fill merged cells in"),
            new LeftOut.Column(2, "kV", "blank for 1 of 3 spots, which then name no beam_energy_kev; fill merged cells in"));
        assertThat(Reading.of("kV;label;Ag at%;Cu at%\n;1;60;40\n;2;61;39\n").report().leftOut()).isEmpty();
    }

    @Test
    void german_words_for_what_was_not_measured_and_for_fields_are_understood() {
        Reading reading = Reading.ofFile("german-words.csv");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.report().leftOut()).isEmpty();
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("1", "2");
        assertThat(reading.spots()).extracting(spot -> spot.particle().orElseThrow()).containsExactly("K1", "K2");
        assertThat(reading.spots().get(0).conditions().tiltDeg()).hasValue(20);
        assertThat(reading.spots().get(0).conditions().beamEnergyKev()).hasValue(15);
        assertThat(reading.spots()).allMatch(spot -> spot.values().size() == 3);
        assertThat(reading.value(0, "C")).isEqualTo(new ReportedValue.NotReported());
        assertThat(reading.value(1, "C")).isEqualTo(new ReportedValue.NotReported());
    }

    @Test
    void what_stands_beside_a_value_that_is_no_number_is_kept_or_told() {
        Reading reading = Reading.of("label;Ag at%;Zn at%;Zn u;Zn net counts;Zn background counts;Zn limit\n"
            + "1;62,4;n.d.;0,1;12;90;0,25\n2;62,0;<0,3;;14;88;0,3\n3;62,0;<0,3;;;;0,2\n4;62,0;0,4;0,1;15;80;0,3\n5;62;;;;;\n");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.value(0, "Zn")).isEqualTo(new ReportedValue.NotDetected(OptionalDouble.of(0.0025), "n.d."));
        assertThat(reading.value(2, "Zn")).isEqualTo(new ReportedValue.BelowLimit(0.003, "<0,3"));
        assertThat(reading.report().leftOut()).containsExactly(
            new LeftOut.Column(4, "Zn u", "stands beside a value that is no number, 1 time"),
            new LeftOut.Column(5, "Zn net counts", "stands beside a value that is no number, 2 times"),
            new LeftOut.Column(6, "Zn background counts", "stands beside a value that is no number, 2 times"),
            new LeftOut.Column(7, "Zn limit", "stands beside a value that is no number, 1 time"));
    }

    @Test
    void a_nominal_composition_at_the_foot_is_no_spot() {
        Reading reading = Reading.of("label;Ag at%;Cu at%\n1;21,2;78,8\nMW;21,2;78,8\nStabw;;\nSoll;60,1;39,9\n");

        assertThat(reading.report().leftOut()).containsExactly(new LeftOut.Row(3, "summary row", "MW"),
            new LeftOut.Row(4, "summary row", "Stabw"), new LeftOut.Row(5, "the nominal composition, no spot", "Soll"));
        assertThat(Reading.of("label;Ag at%\nSoll;60,1\n1;21,2\n").fault().detail()).endsWith("else move it to the foot.");
    }

    @Test
    void a_title_above_the_header_is_left_out_and_listed() {
        Reading reading = Reading.ofFile("title-above-header.csv");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1-dark-1", "P1-dark-2", "P2-matrix-1");
        assertThat(reading.report().leftOut()).containsExactly(
            new LeftOut.Row(1, "above the header", "Ag-Cu powder, lot 7 (invented)"));
    }

    @ParameterizedTest
    @CsvSource({"units-below-header.csv, 2, (at.%)", "units-above-header.csv, 2, at%"})
    void units_in_a_row_of_their_own_are_the_units_of_their_columns(String file, int line, String unit) {
        Reading reading = Reading.ofFile(file);

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.fraction(0, "Ag")).isEqualTo(0.212);
        assertThat(reading.dialect().unit()).contains(Basis.ATOMIC);
        assertThat(reading.report().leftOut()).contains(new LeftOut.Row(line, "units of the columns", unit));
    }

    @Test
    void the_stated_unit_chooses_between_units_in_a_row_of_their_own() {
        Reading reading = Reading.ofFile("units-of-both-kinds-below-header.csv",
            IntakeOptions.DEFAULT.withStated(StatedDialect.NOTHING.withUnit("at%")));

        assertThat(reading.fraction(0, "Ag")).isEqualTo(0.212);
        assertThat(reading.fraction(0, "Cu")).isEqualTo(0.788);
        assertThat(Reading.ofFile("units-of-both-kinds-below-header.csv").report().tableRefused()).isTrue();
    }

    @Test
    void units_in_merged_cells_hold_for_the_same_elements_under_each_and_not_for_more() {
        IntakeOptions mass = IntakeOptions.DEFAULT.withStated(StatedDialect.NOTHING.withUnit("wt%"));

        Reading reading = Reading.ofFile("merged-units-above-header.csv", mass);
        assertThat(reading.fraction(0, "Ag")).isEqualTo(0.314);
        assertThat(reading.fraction(0, "Cu")).isEqualTo(0.686);
        assertThat(Reading.ofFile("merged-unit-above-one.csv").fault().detail()).contains("the unit of Cu");
    }

    @Test
    void a_long_table_may_name_lines_and_elements_in_words_and_its_totals_are_left_out() {
        Reading reading = Reading.ofFile("long-with-totals.csv");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1-dark-1", "P2-matrix-1");
        assertThat(((ReportedValue.Measured) reading.value(0, "Ag")).line()).contains("L");
        assertThat(((ReportedValue.Measured) reading.value(0, "Cu")).line()).contains("K");
        assertThat(reading.fraction(1, "Ag")).isEqualTo(0.738);
        assertThat(reading.report().leftOut()).containsExactly(new LeftOut.Row(4, "total of a spot", "Total"),
            new LeftOut.Row(7, "total of a spot", "Total"));
    }

    @Test
    void a_note_at_the_foot_is_left_out_and_listed_and_a_label_alone_is_not() {
        Reading reading = Reading.ofFile("note-at-foot.csv");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).hasSize(2);
        assertThat(reading.report().leftOut()).containsExactly(new LeftOut.Row(5, "summary row", "Mean"),
            new LeftOut.Row(6, "note at the foot", "Measured on 24.11.2026 by A"));
        assertThat(Reading.of("label;Ag at%\nP1-1;62,4\n\nSpectrum 2\n").report().faults()).hasSize(1);
    }

    @Test
    void a_percent_sign_behind_a_number_changes_nothing() {
        Reading reading = Reading.ofFile("percent-signs.csv");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.fraction(0, "Ag")).isEqualTo(0.212);
        assertThat(reading.fraction(0, "Cu")).isEqualTo(0.788);
        assertThat(reading.value(0, "Zn")).isEqualTo(new ReportedValue.BelowLimit(0.003, "<0,3 %"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"No.", "#", "ID", "Name", "", "Spectre", "Messung", "Spot No.", "\u8C31\u56FE"})
    void the_label_may_go_by_other_names_where_no_column_is_called_so(String name) {
        Reading reading = Reading.of(name + ";Ag at%;Cu at%\nP1-1;62,4;37,6\n");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1-1");
        assertThat(reading.report().leftOut()).isEmpty();
    }

    @Test
    void a_first_column_of_row_numbers_without_a_name_is_left_out() {
        Reading reading = Reading.ofFile("row-numbers.csv");

        assertThat(reading.spots()).hasSize(2);
        assertThat(reading.report().leftOut()).containsExactly(new LeftOut.Column(1, "", "the column has no name"));
    }

    @Test
    void columns_that_are_no_field_and_no_element_are_left_out_and_listed() {
        Reading reading = Reading.ofFile("remark-column.csv");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.report().leftOut()).containsExactly(
            new LeftOut.Column(2, "Remark", "neither a field nor an element"),
            new LeftOut.Column(5, "Operator", "neither a field nor an element"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"Europe/Berlin", "+01:00"})
    void local_times_are_read_in_the_stated_zone(String zone) {
        Reading reading = Reading.ofFile("local-times.csv",
            IntakeOptions.DEFAULT.withStated(StatedDialect.NOTHING.withTimeZone(zone)));

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).extracting(spot -> spot.acquiredTime().orElseThrow().toString())
            .containsExactly("2026-11-20T14:03+01:00", "2026-11-20T14:05:30+01:00", "2026-11-20T14:08+01:00");
        assertThat(reading.dialect().timeZone().orElseThrow().getId()).isEqualTo(zone);
    }

    @Test
    void a_stated_unit_supplies_a_missing_one_and_chooses_between_two() {
        IntakeOptions atomic = IntakeOptions.DEFAULT.withStated(StatedDialect.NOTHING.withUnit("at%"));

        assertThat(Reading.ofFile("unit-missing.csv", atomic).fraction(0, "Ag")).isEqualTo(0.624);
        Reading both = Reading.ofFile("both-units.csv", atomic);
        assertThat(both.fraction(0, "Ag")).isEqualTo(0.624);
        assertThat(both.report().leftOut()).containsExactly(new LeftOut.Column(2, "Ag [wt.%]",
            "in wt%, at% was stated"),
            new LeftOut.Column(3, "Cu [wt.%]", "in wt%, at% was stated"));
        assertThat(Reading.ofFile("mixed-units.csv", atomic).fault().code()).isEqualTo(FaultCode.UNIT_MISSING);
    }

    @Test
    void reference_spots_carry_the_composition_of_their_piece() {
        Reading reading = Reading.ofFile("reference.csv");

        assertThat(reading.spots()).extracting(Spot::isReference).containsExactly(true, false);
        assertThat(reading.spots().get(0).reference().orElseThrow().sameMaterial()).isTrue();
        assertThat(reading.spots().get(0).reference().orElseThrow().trueComposition().resolve().low(1))
            .isCloseTo(0.399, within(1e-12));
        assertThat(reading.fault().code()).isEqualTo(FaultCode.NOMINAL_INCOMPLETE);
        assertThat(reading.cell()).isEqualTo(new Place.Cell(3, 3, "true_composition", ""));
    }

    @ParameterizedTest
    @ValueSource(strings = {"ag-cu-braze-powder.csv", "sn-bi-solder-spheres.csv"})
    void the_sample_tables_are_read_without_a_fault(String file) throws IOException {
        byte[] bytes = Files.readAllBytes(Path.of("sample-spectra-results", file));
        Reading reading = Reading.of(bytes, IntakeOptions.DEFAULT);

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.report().leftOut()).allMatch(part -> part.reason().equals("summary row"));
        assertThat(reading.spots()).isNotEmpty()
            .allMatch(spot -> spot.particle().isPresent() && spot.feature().isPresent());
    }
}
