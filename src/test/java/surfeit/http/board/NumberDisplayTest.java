package surfeit.http.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumberDisplayTest {
    private static String comma(String html, String... names) {
        return NumberDisplay.COMMA.shown(html, List.of(names));
    }

    @Test
    void decimal_numbers_get_a_comma_wherever_they_stand_in_a_text() {
        assertThat(comma("<p>Cu enriched, \u00d71.92 (1.74 to 2.07), p &lt; 0.001.</p>"))
            .isEqualTo("<p>Cu enriched, \u00d71,92 (1,74 to 2,07), p &lt; 0,001.</p>");
        assertThat(comma("-0.5 at%; 61.9 \u00b1 4.2; ends with 1.5."))
            .isEqualTo("-0,5 at%; 61,9 \u00b1 4,2; ends with 1,5.");
    }

    @Test
    void attributes_versions_times_and_whole_numbers_stay() {
        String html = "<svg viewBox=\"0.5 1.5 2.5 3.5\"><time datetime=\"2026-11-20T14:03:00.123Z\">14:03</time></svg>"
            + "Surfeit 0.1.0, Computed 2026-11-20T14:03:00.123Z, 10.1007/s1.2, 12 spots.";
        assertThat(comma(html)).isEqualTo(html);
    }

    @Test
    void words_of_the_lab_keep_their_points() {
        assertThat(comma("<bdi>film 1.5</bdi> 1.5")).isEqualTo("<bdi>film 1.5</bdi> 1,5");
        assertThat(comma("film 1.5 &lt;a&gt;, on particles of this kind: 2.5", "film 1.5 <a>"))
            .isEqualTo("film 1.5 &lt;a&gt;, on particles of this kind: 2,5");
    }

    @Test
    void with_points_a_page_is_as_it_was_made() {
        assertThat(NumberDisplay.POINT.shown("1.5", List.of())).isEqualTo("1.5");
    }

    /** Decimal marks of languages: Unicode CLDR, from memory. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"de-DE,de;q=0.9,en;q=0.8 | COMMA", "en-GB,en;q=0.9,de;q=0.8 | POINT",
        "fr | COMMA",
        "'' | POINT", "* | POINT", "en;q=0.5, DE-at | COMMA", "de-CH | COMMA", "nonsense;;q=x | POINT"})
    void the_language_of_the_browser_decides(String acceptLanguage, NumberDisplay expected) {
        assertThat(NumberDisplay.of(acceptLanguage)).isEqualTo(expected);
    }
}
