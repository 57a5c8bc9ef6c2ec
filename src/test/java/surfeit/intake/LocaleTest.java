package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The machine's language changes nothing: a comma is no decimal mark by itself, and a Turkish small I hides no word.
 */
class LocaleTest {
    private static final List<String> FILES = List.of("all-fields.csv", "not-detected.csv", "foot-german.csv",
        "foot-english.csv",
        "two-decimal-marks.csv", "unknown-element.csv", "reference.csv", "windows-1252.csv", "long-unit-column.csv",
        "local-times.csv",
        "out-of-range.csv", "thousands-separator.csv");

    private final Locale usual = Locale.getDefault();

    static Stream<String> tagsAndFiles() {
        return Stream.of("de-DE", "tr-TR", "ar-EG").flatMap(tag -> FILES.stream().map(file -> tag + " " + file));
    }

    @ParameterizedTest
    @MethodSource("tagsAndFiles")
    void every_upload_is_read_alike_under_any_locale(String tagAndFile) {
        String[] parts = tagAndFile.split(" ");
        Locale.setDefault(Locale.ROOT);
        Reading expected = Reading.ofFile(parts[1]);
        Locale.setDefault(Locale.forLanguageTag(parts[0]));

        assertThat(Reading.ofFile(parts[1])).isEqualTo(expected);
    }

    @ParameterizedTest
    @MethodSource("turkishWords")
    void words_with_an_i_are_known_in_turkish_capitals(String header) {
        Locale.setDefault(Locale.forLanguageTag("tr-TR"));

        assertThat(ColumnReader.read(header)).isNotInstanceOf(ColumnMeaning.Other.class);
    }

    static Stream<String> turkishWords() {
        return Stream.of("PARTICLE", "ACQUIRED TIME", "POSITION", "LIVE TIME (S)", "TILT DEG", "UNIT", "Si WEIGHT%",
            "Si AT% SIGMA", "Si LIMIT AT%");
    }

    @AfterEach
    void restore() {
        Locale.setDefault(usual);
    }
}
