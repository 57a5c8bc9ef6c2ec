package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.composition.Basis;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/** Tables with the elements one below the other and a spot a column, small files and texts with invented numbers. */
class TurnedUploadTest {
    private static final IntakeOptions ATOMIC = stated("at%");
    private static final IntakeOptions MASS = stated("wt%");

    private static IntakeOptions stated(String unit) {
        return IntakeOptions.DEFAULT.withStated(StatedDialect.NOTHING.withUnit(unit));
    }

    @ParameterizedTest
    @CsvSource({"spots-as-columns-with-units.csv, 20.1, 38.7", "turned-unit-in-corner.csv, 21.2, 37.6",
        "turned-unit-in-title.csv, 21.2, 37.6", "turned-unit-in-note.csv, 21.2, 37.6", "turned-unit-row.csv, 21.2, 37.6",
        "turned-unit-column.csv, 21.2, 37.6", "turned-unit-beside-labels.csv, 21.2, 37.6",
        "turned-label-in-corner.tsv, 21.2, 37.6", "turned-nothing-in-corner.csv, 21.2, 37.6"})
    void every_column_is_one_spot_wherever_the_unit_stands(String file, double silver, double copper) {
        Reading reading = Reading.ofFile(file);

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.dialect().layout()).contains(CsvDialect.Layout.TURNED);
        assertThat(reading.dialect().unit()).contains(Basis.ATOMIC);
        assertThat(reading.fraction(0, "Ag")).isEqualTo(silver / 100);
        assertThat(reading.fraction(1, "Cu")).isEqualTo(copper / 100);
    }

    @Test
    void the_unit_may_be_stated_and_must_be_where_the_table_says_none() {
        Reading reading = Reading.ofFile("spots-as-columns.csv", ATOMIC);

        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1-dark-1", "P2-matrix-1");
        assertThat(reading.fraction(0, "Ag")).isEqualTo(0.212);
        assertThat(reading.report().leftOut()).isEmpty();
        assertThat(Reading.ofFile("spots-as-columns.csv").report().faults()).extracting(Fault::code)
            .containsOnly(FaultCode.UNIT_MISSING);
        assertThat(Reading.ofFile("spots-as-columns-with-units.csv", MASS).report().tableRefused()).isTrue();
    }

    @Test
    void rows_of_fields_below_the_labels_are_fields_of_each_spot() {
        Reading reading = Reading.ofFile("turned-fields.csv");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).extracting(spot -> spot.label() + "/" + spot.particle().orElseThrow() + "/"
            + spot.feature().orElseThrow()).containsExactly("1/P1/dunkle Stelle", "2/P1/Matrix", "3/P2/Matrix");
        assertThat(reading.spots()).extracting(spot -> spot.conditions().tiltDeg()).containsExactly(
            OptionalDouble.of(20), OptionalDouble.empty(), OptionalDouble.of(-5));
        assertThat(reading.spots().get(0).session()).contains("2026-11-20-a");
        assertThat(reading.spots().get(0).conditions().rawTotal()).hasValue(0.974);
        assertThat(reading.value(0, "Zn")).isEqualTo(new ReportedValue.BelowLimit(0.003, "<0,3"));
        assertThat(reading.value(1, "Zn")).isEqualTo(new ReportedValue.NotDetected(OptionalDouble.empty(), "n.n."));
        assertThat(((ReportedValue.Measured) reading.value(0, "Ag")).uncertainty()).hasValue(0.004);
        assertThat(reading.report().leftOut()).containsExactly(
            new LeftOut.Row(1, "above the header", "Los 7, erfundene Zahlen"),
            new LeftOut.Row(13, "note", "Gemessen am 24.11.2026 von A"),
            new LeftOut.Column(5, "Mittelwert", "summary column"), new LeftOut.Column(6, "Stabw", "summary column"),
            new LeftOut.Row(12, "neither a field nor an element", "Bearbeiter"));
    }

    @Test
    void a_turned_table_gives_the_spots_that_the_same_wide_table_gives() {
        List<List<String>> wide = ("label;particle;Ag at%;Ag at% u;Cu at%;Zn at%;total\n"
            + "P1-1;P1;21,2;0,4;78,8;n.d.;97,4\nP1-2;P1;62,4;;37,6;<0,3;99").lines().map(line -> List.of(line.split(";", -1))).toList();
        String turned = IntStream.range(0, wide.get(0).size()).mapToObj(column -> wide.stream()
            .map(row -> row.get(column)).collect(Collectors.joining(";"))).collect(Collectors.joining("\n"));

        Reading reading = Reading.of(turned);
        assertThat(reading.dialect().layout()).contains(CsvDialect.Layout.TURNED);
        assertThat(reading.spots()).isEqualTo(Reading.of(wide.stream().map(row -> String.join(";", row))
            .collect(Collectors.joining("\n"))).spots());
    }

    @Test
    void the_stated_unit_chooses_between_columns_under_merged_labels() {
        Reading reading = Reading.ofFile("turned-both-units-merged.csv", ATOMIC);

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("Spot 1", "Spot 2");
        assertThat(reading.fraction(1, "Ag")).isEqualTo(0.624);
        assertThat(reading.report().leftOut()).contains(new LeftOut.Column(2, "Spot 1", "in wt%, at% was stated"));
        assertThat(Reading.ofFile("turned-both-units-merged.csv", MASS).fraction(1, "Ag")).isEqualTo(0.738);
        assertThat(Reading.ofFile("turned-both-units-merged.csv").fault().detail())
            .isEqualTo("Expected one unit for all spots, found wt% and at%; state the unit to take.");
    }

    @Test
    void columns_of_lines_atomic_numbers_and_nominal_values_are_no_spots() {
        Reading reading = Reading.ofFile("turned-lines-and-nominal.csv", ATOMIC);

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("Messpunkt 1", "Messpunkt 2");
        assertThat(((ReportedValue.Measured) reading.value(0, "Ag")).line()).contains("L");
        assertThat(((ReportedValue.Measured) reading.value(0, "Cu")).line()).contains("K");
        assertThat(reading.report().leftOut()).containsExactly(new LeftOut.Column(2, "OZ", "the atomic numbers"),
            new LeftOut.Column(4, "Soll", "the nominal composition, no spot"),
            new LeftOut.Column(7, "Bemerkung", "holds no values"));
    }

    @Test
    void faults_name_the_line_and_column_of_their_cell_and_other_columns_are_spots() {
        Reading reading = Reading.ofFile("turned-one-cell-bad.csv");

        assertThat(reading.cell()).isEqualTo(new Place.Cell(4, 3, "P1-2", "38,1x"));
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1-1", "P2-1");
        assertThat(reading.report().rejectedCount()).isEqualTo(1);
        assertThat(reading.report().tableRefused()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"Mean (at%)", "Mean (n=2)", "Mittelwert n = 2 (at%)", "\u00D8", "\u00F8 (at%)", "SD (at%)"})
    void a_summary_column_is_no_spot_with_a_unit_or_a_number_of_spots_either(String name) {
        Reading reading = Reading.of("El;P1;P2;" + name + "\nAg;60;61;60.5\nCu;40;39;39.5\n", ATOMIC);

        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1", "P2");
        assertThat(reading.report().leftOut()).containsExactly(new LeftOut.Column(4, name, "summary column"));
    }

    @Test
    void labels_that_hold_such_a_word_for_another_reason_stay_labels() {
        Reading reading = Reading.of("El;S1;N1;P1 line 2;sigma phase;P2 (n=3)\nAg;60;61;62;63;64\nCu;40;39;38;37;36\n",
            ATOMIC);

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).extracting(Spot::label)
            .containsExactly("S1", "N1", "P1 line 2", "sigma phase", "P2 (n=3)");
    }

    @Test
    void rejected_spots_come_back_as_rows_of_a_wide_table_that_can_be_mended_and_sent() {
        Reading reading = Reading.ofFile("turned-one-cell-bad.csv");

        assertThat(reading.rejectedTable()).isEqualTo("label;Partikel;Ag at%;Cu at%;problem\n"
            + "P1-2;P1;61,9;38,1x;\"value-out-of-range: Expected a number such as 62.4, found \"\"38,1x\"\".\"\n");
        Reading mended = Reading.of(reading.rejectedTable().replace("38,1x", "38,1"));
        assertThat(mended.report().faults()).isEmpty();
        assertThat(mended.fraction(0, "Cu")).isEqualTo(0.381);
        assertThat(mended.spots().get(0).particle()).contains("P1");
    }

    @Test
    void the_same_spot_twice_is_told_by_its_columns() {
        assertThat(Reading.of("El;1;1\nAg at%;21,2;21,2\nCu at%;78,8;78,8\n").report().leftOut())
            .containsExactly(new LeftOut.Column(3, "1", "the same spot with the same values as in column 2"));
        Reading other = Reading.of("El;1;1\nAg at%;21,2;21,3\nCu at%;78,8;78,7\n");
        assertThat(other.cell()).isEqualTo(new Place.Cell(1, 3, "1", "1"));
        assertThat(other.fault().detail()).contains("other values than in column 2");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', value = {
        "El;A;B\\nAg;1;2\\nCu;99;98                     | 1 | 3 | found \"B\"; if it is a label, give the spot another one",
        "El;P1;P1 sigma\\nAg;1;2\\nCu;99;98             | 1 | 3 | an uncertainty may stand in a row such as \"Ag u\"",
        "El;1;1 (1\u03C3)\\nAg;60;1\\nCu;40;1            | 1 | 3 | found \"1 (1\u03C3)\"",
        "El;Spot1;Spot1_err\\nAg;60;1\\nCu;40;1          | 1 | 3 | found \"Spot1_err\"",
        "El;Spot 1;Fehler Spot 1\\nAg;60;1\\nCu;40;1     | 1 | 3 | found \"Fehler Spot 1\"",
        "El;Spot 1;Error 1\\nAg;60;1\\nCu;40;1           | 1 | 3 | found \"Error 1\"; if it is a label, give the spot",
        "El;unnorm.;norm.\\nAg;55;60\\nCu;37;40          | 1 | 0 | there must be a row that begins with",
        "El;1;c norm.\\nAg;55;60\\nCu;37;40              | 1 | 3 | found \"c norm.\"",
        "El;1;mean;2\\nAg;1;1;1\\nCu;99;99;99           | 1 | 3 | found \"mean\" left of \"2\"",
        "El;1;Fehler\\nAg;1;2\\nCu;99;98                | 1 | 3 | found \"Fehler\"",
        "El;1;\\nAg;1;2\\nCu;99;98                      | 1 | 3 | Expected the label of a spot above its column",
        "El;1;2\\nAg;1\\nCu;99;98                       | 2 | 3 | 3 columns as in the row of labels, found 2",
        "El,1,2\\nAg,1,2\\nCu,99,98,5                   | 3 | 4 | found 4; numbers with a decimal comma need quotes",
        "El;1;2\\nAg;1;2\\nCu;99;98\\n;1;1              | 4 | 1 | the element or field that the row holds",
        "El;1;2\\nAg;1;2\\nCU;99;98\\nZn;1;1            | 3 | 1 | found \"CU\"; nearest known: Cu",
        "El;1;2\\nAg at%;1;2\\nCu at%;99;98\\nZn wt%;1;1| 4 | 1 | one unit for all elements",
        "El (wt%);1;2\\nAg at%;1;2\\nCu;99;98           | 2 | 1 | one unit for Ag, found at% and wt%",
        "El;1 at%;2\\nAg;1;2\\nCu;99;98                 | 1 | 3 | the unit of \"2\", at% or wt%, as of the other columns",
        ";P1;P1\\nEl;1;2\\nAg;1;2\\nCu;99;98            | 2 | 0 | name the first cell of the other, such as \"particle\"",
        "Element;1;2\\nAg;1;2\\nCu;3;4\\nAg;5;6         | 1 | 0 | send each table as a file of its own",
        ";B;C\\nAg;1;2\\nCu;99;98                         | 1 | 0 | elements in the header or in the first column, found both",
        "Ag;1;2\\nCu;99;98                              | 1 | 0 | there must be a row that begins with \"Element\"",
        "Element;Wert\\nAg;1\\nCu;99                    | 1 | 0 | there must be a row that begins with \"Element\"",
        "Element;1;2\\nSilber;1;2\\nKupfer;99;98        | 1 | 0 | write the elements as symbols, such as Ag for \"Silber\"",
        "El;1 at%;2 at%\\n;wt%;at%\\nAg;1;2\\nCu;99;98   | 1 | 2 | one unit for \"1\", found at% and wt%",
        "El;1;2\\n;at%;at%\\n;wt%;wt%\\nAg;1;2\\nCu;99;98 | 3 | 0 | one row of units, found line 2 and line 3",
        "Alle Angaben in at%\\nAlle Werte in wt%\\nEl;1;2\\nAg;1;2\\nCu;99;98 | 2 | 0 | one unit for the table, found at% and wt%",
        "Ofen;A;B;C\\nEl;1;2;3\\nAg;1;2;3\\nCu;99;98;97   | 1 | 0 | a title above the labels in line 2",
        "El;Einheit;1;2\\nAg;ppm;1;2\\nCu;at%;99;98      | 2 | 2 | the unit at% or wt%, found \"ppm\"",
        "Element;at%;sigma\\nAg;1;2\\nCu;99;98          | 1 | 1 | Expected a header with a column \"label\""})
    void what_may_be_read_otherwise_is_refused_with_a_way_out(String table, int line, int column, String detail) {
        Reading reading = Reading.of(table.replace("\\n", "\n"),
            table.contains("at%") || table.contains("wt%") ? IntakeOptions.DEFAULT : ATOMIC);

        assertThat(reading.report().tableRefused()).isTrue();
        assertThat(reading.spots()).isEmpty();
        Fault fault = reading.report().faults().get(0);
        assertThat(fault.detail()).contains(detail);
        assertThat(fault.place() instanceof Place.Cell cell ? cell.line() + "," + cell.column()
            : ((Place.Row) fault.place()).line() + ",0").isEqualTo(line + "," + column);
    }

    /** Invented; every table holds the same two spots, 21.2 and 60 at% Ag, and what else may stand beside them. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', value = {
        "El;at% A1;at% A2\\nAg;21.2;60\\nCu;78.8;40                     | ",
        "El;A1 [at.%];A2 [at.%]\\nAg;21.2;60\\nCu;78.8;40               | ",
        "El;A1 at\uFF05;A2 at\uFF05\\nAg;21.2;60\\nCu;78.8;40           | ",
        "El;A1;A2\\n;at%;at%\\nAg;21.2;60\\nCu;78.8;40                  | line 2 at%: units of the columns",
        "El;Linie;A1;A2\\nAg;oben;21.2;60\\nCu;unten;78.8;40            | column 2 Linie: not understood",
        "El;A1;A2;Mittelwert;Fehler\\nAg;21.2;60;1;1\\nCu;78.8;40;1;1   | column 4 Mittelwert: summary column, column 5 Fehler: summary column",
        "El;A1;A2\\nAg;21.2;60\\nCu;78.8;40\\nMittelwert;50;50          | line 4 Mittelwert 50 50: summary row"})
    void what_stands_beside_the_spots_leaves_their_numbers_and_is_told(String table, String leftOut) {
        Reading reading = Reading.of(table.replace("\\n", "\n"), ATOMIC);

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("A1", "A2");
        assertThat(reading.dialect().unit()).contains(Basis.ATOMIC);
        assertThat(reading.fraction(0, "Ag")).isEqualTo(0.212);
        assertThat(reading.fraction(1, "Cu")).isEqualTo(0.4);
        assertThat(reading.report().leftOut().stream().map(TurnedUploadTest::words).collect(Collectors.joining(", ")))
            .isEqualTo(leftOut == null ? "" : leftOut);
    }

    private static String words(LeftOut left) {
        return left instanceof LeftOut.Row row ? "line " + row.line() + " " + row.label() + ": " + row.reason()
            : left instanceof LeftOut.Column column ? "column " + column.column() + " " + column.columnName() + ": "
            + column.reason() : left.toString();
    }

    @Test
    void spots_called_as_elements_are_read_where_the_header_says_what_they_are() {
        assertThat(Reading.of("label;Ag;Cu\nAg;99;1\nCu;1;99\n", ATOMIC).spots()).extracting(Spot::label)
            .containsExactly("Ag", "Cu");
        assertThat(Reading.of(";Ag at%;Cu at%\nAg;99;1\nCu;1;99\n").spots()).hasSize(2);
        assertThat(Reading.of(";Ag;Cu\nAg;99;1\n1;20;80\n", ATOMIC).spots()).hasSize(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Ag-28Cu (wt%), invented", "Nominal 60 at% Cu"})
    void a_title_that_speaks_of_something_else_gives_no_unit(String title) {
        assertThat(Reading.of(title + "\nEl;1;2\nAg;1;2\nCu;99;98\n").report().faults()).extracting(Fault::code)
            .containsOnly(FaultCode.UNIT_MISSING);
    }

    @Test
    void more_spots_than_columns_or_rows_allowed_are_refused_by_the_setting() {
        String table = "El" + IntStream.range(0, 9).mapToObj(i -> ";s" + i).collect(Collectors.joining())
            + "\nAg" + ";1".repeat(9) + "\nCu" + ";99".repeat(9) + "\n";

        IntakeOptions few = ATOMIC.withLimits(new IntakeLimits(100, 2, 10, 50, 8));
        assertThat(Reading.of(table, few).fault().setting()).contains("columns-max");
        assertThat(Reading.of("A title\n" + table, few).fault().setting()).contains("columns-max");
        Reading rows = Reading.of(table, ATOMIC.withLimits(new IntakeLimits(8, 2, 10, 50, 20)));
        assertThat(rows.fault().setting()).contains("upload-rows-max");
        assertThat(rows.cell().column()).isEqualTo(10);
        Reading elements = Reading.of(table, ATOMIC.withLimits(new IntakeLimits(100, 1, 10, 50, 20)));
        assertThat(elements.fault().setting()).contains("elements-per-spot-max");
    }

    @Test
    void a_table_that_goes_on_for_ever_is_not_held() {
        String table = "El;1;2\nAg;1;2\nCu;99;98\n" + "Remark;a;b\n".repeat(300);

        Fault fault = Reading.of(table, ATOMIC).fault();
        assertThat(fault.detail()).contains("at most 200 rows");
        assertThat(fault.place()).isEqualTo(new Place.Row(201));
        String wide = "El" + ";x".repeat(9_000) + "\nAg" + ";1".repeat(9_000) + "\nCu" + ";99".repeat(9_000) + "\n"
            + ("tilt_deg" + ";".repeat(9_000) + "\n").repeat(100);
        IntakeOptions many = ATOMIC.withLimits(new IntakeLimits(100_000, 64, 200, 32_767, 10_000));
        assertThat(Reading.of(wide, many).fault().detail()).contains("4000000 characters");
    }
}
