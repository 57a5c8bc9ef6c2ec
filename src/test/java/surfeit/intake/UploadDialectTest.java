package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.spot.Spot;

/** Characters, delimiters and decimal marks of real tables, one small file each, with invented numbers. */
class UploadDialectTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', value = {
        "plain-comma.csv                  | ,   | . | utf-8",
        "plain-semicolon-decimal-comma.csv| ;   | , | utf-8",
        "plain-tab.tsv                    | tab | . | utf-8",
        "plain-pipe.csv                   | ~|~ | . | utf-8",
        "bom.csv                          | ;   | , | utf-8",
        "sep-line.csv                     | ;   | , | utf-8",
        "bom-and-sep-line.csv             | ;   | , | utf-8",
        "sep-tab.csv                      | tab | . | utf-8",
        "crlf.csv                         | ;   | , | utf-8",
        "cr-only.csv                      | ;   | , | utf-8",
        "no-newline-at-end.csv            | ;   | , | utf-8",
        "decimal-comma-quoted.csv         | ,   | , | utf-8",
        "utf-16le-bom.csv                 | tab | , | utf-16le",
        "utf-16be-bom.csv                 | tab | , | utf-16be",
        "utf-16le-no-bom.csv              | tab | , | utf-16le",
        "trailing-delimiters.csv          | ;   | , | utf-8"})
    void the_same_three_spots_are_read_from_every_dialect(String file, String delimiter, char decimal, String charset) {
        Reading reading = Reading.ofFile(file);

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1-dark-1", "P1-dark-2", "P2-matrix-1");
        assertThat(reading.spots()).extracting(spot -> spot.feature().orElseThrow() + "/"
            + spot.particle().orElseThrow())
            .containsExactly("dark patch/P1", "dark patch/P1", "matrix/P2");
        assertThat(reading.fraction(0, "Ag")).isEqualTo(0.212);
        assertThat(reading.fraction(2, "Cu")).isEqualTo(0.376);
        assertThat(reading.value(0, "Ag").asReported()).isEqualTo(decimal == ',' ? "21,2" : "21.2");
        assertThat(reading.dialect().delimiterName()).isEqualTo(delimiter);
        assertThat(reading.dialect().decimal()).contains(decimal);
        assertThat(reading.dialect().charsetName()).isEqualTo(charset);
        assertThat(reading.dialect().decidedBy().words()).isEqualTo("detected");
    }

    @Test
    void windows_1252_umlauts_and_micrometres_are_read() {
        Reading reading = Reading.ofFile("windows-1252.csv");

        assertThat(reading.dialect().charsetName()).isEqualTo("windows-1252");
        assertThat(reading.spots()).singleElement().satisfies(spot -> {
            assertThat(spot.feature()).contains("dunkle Stelle, größer");
            assertThat(spot.particle()).contains("Körnchen 1");
            assertThat(spot.conditions().featureSizeUm()).isEqualTo(OptionalDouble.of(3));
        });
    }

    @Test
    void another_decimal_mark_later_in_the_file_is_refused_where_it_stands() {
        Reading reading = Reading.ofFile("two-decimal-marks.csv");

        assertThat(reading.fault().code()).isEqualTo(FaultCode.MIXED_DECIMAL_MARKS);
        assertThat(reading.cell()).isEqualTo(new Place.Cell(4, 3, "Cu at%", "37.90"));
        assertThat(reading.fault().detail()).isEqualTo(
            "Expected the decimal mark , of this upload (\"62,40\" has it), found \"37.90\".");
        assertThat(reading.spots()).hasSize(2);
    }

    @ParameterizedTest
    @CsvSource({"thousands-separator.csv, '12,345'", "thousands-separator-blank.csv, 12 345",
        "thousands-separator-only-counts.csv, '12,345'"})
    void a_thousands_separator_is_refused(String file, String value) {
        Reading reading = Reading.ofFile(file);

        assertThat(reading.report().faults()).extracting(Fault::code).containsOnly(FaultCode.MIXED_DECIMAL_MARKS);
        assertThat(reading.spots()).isEmpty();
        assertThat(reading.report().faults()).anySatisfy(fault -> assertThat(fault.detail())
            .contains(value.substring(value.length() - 3)));
    }

    @Test
    void unquoted_decimal_commas_between_comma_delimiters_are_refused_not_guessed() {
        Reading reading = Reading.ofFile("decimal-comma-unquoted.csv");

        assertThat(reading.spots()).isEmpty();
        assertThat(reading.report().faults()).hasSize(3).allSatisfy(fault -> {
            assertThat(fault.code()).isEqualTo(FaultCode.UNREADABLE_TABLE);
            assertThat(fault.detail()).contains("decimal comma need quotes");
        });
    }

    @Test
    void stated_properties_win_and_the_report_says_so() {
        StatedDialect stated = StatedDialect.NOTHING.withCharset("iso-8859-1").withDelimiter("semicolon")
            .withDecimal(",");
        Reading reading = Reading.of("label;Ag at%;Cu at%\nK\u00f6rnchen;62;38\n".getBytes(StandardCharsets.ISO_8859_1),
            IntakeOptions.DEFAULT.withStated(stated));

        assertThat(reading.spots()).extracting(Spot::label).containsExactly("Körnchen");
        assertThat(reading.dialect().charsetName()).isEqualTo("iso-8859-1");
        assertThat(reading.dialect().decimal()).contains(',');
        assertThat(reading.dialect().decidedBy().words()).isEqualTo("stated");
        assertThat(Reading.ofFile("plain-comma.csv", IntakeOptions.DEFAULT.withStated(stated)).spots()).isEmpty();
    }
}
