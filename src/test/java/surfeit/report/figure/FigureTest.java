package surfeit.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.Verdict;

class FigureTest {
    private static final Figure FIGURE = new Figure("T & <i>", "s", "d", 800, 200, 50, "");

    @Test
    void a_figure_inside_a_page_brings_no_style_and_ids_of_its_own() {
        String inline = FIGURE.inline("figure-2");
        assertThat(inline).contains("aria-labelledby=\"figure-2-title figure-2-desc\"")
            .doesNotContain("<style", "<?xml");
        assertThat(inline).contains("viewBox=\"0 50 800 150\"").contains("T &amp; &lt;i&gt;");
        assertThatThrownBy(() -> FIGURE.inline("a\" onload=\"x")).hasMessageContaining("letters, digits and dashes");
    }

    @Test
    void a_figure_as_a_file_carries_the_style_whose_hash_it_names() {
        Matcher style = Pattern.compile("<style>(.*)</style>", Pattern.DOTALL).matcher(FIGURE.svg());
        assertThat(style.find()).isTrue();
        assertThat(StyleSource.of(style.group(1))).isEqualTo(Figure.STYLE_SOURCE);
        assertThat(style.group(1)).contains("@media screen and (prefers-color-scheme:dark)");
    }

    @Test
    void the_hash_of_a_style_is_that_of_the_policy_standard() {
        // Example of the W3C's Content Security Policy Level 3 (from memory): the hash of this very script.
        assertThat(StyleSource.of("alert('Hello, world.');"))
            .isEqualTo("'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='");
    }

    @Test
    void a_figure_without_words_or_room_is_refused() {
        assertThatThrownBy(() -> new Figure("", "s", "d", 1, 1, 0, ""))
            .hasMessageContaining("a title and a description");
        assertThatThrownBy(() -> new Figure("t", "s", "d", 800, 40, 50, "")).hasMessageContaining("got 800 by 40");
    }

    @Test
    void every_verdict_has_its_sign_beside_its_word_and_other_words_have_none() {
        Map<String, String> signs = Map.of("enriched, fragile", "polygon", "lower", "polygon", "equivalent", "polygon",
            "inconclusive, leans depleted", "circle");
        signs.forEach((words, shape) -> assertThat(VerdictSign.inline(words))
            .contains("aria-hidden=\"true\"", "<" + shape));
        assertThat(VerdictSign.inline("not measured")).isEmpty();
        assertThat(Verdict.values()).allSatisfy(verdict -> assertThat(VerdictSign.inline(verdict.word())).isNotEmpty());
        assertThat(Contrast.Word.values()).allSatisfy(word -> assertThat(VerdictSign.inline(word.word())).isNotEmpty());
    }

    @Test
    void long_names_are_cut_between_whole_characters() {
        String cut = TextWidth.fitted("\ud83d\udd2c".repeat(30), Type.BODY, 60);
        assertThat(cut).endsWith("\u2026");
        assertThat(cut.codePoints().filter(c -> c >= 0xD800 && c < 0xE000)).isEmpty();
        assertThat(TextWidth.fitted("rim", Type.BODY, 60)).isEqualTo("rim");
    }

    @Test
    void a_coordinate_that_is_no_number_is_refused() {
        assertThatThrownBy(() -> new Drawing().rectangle(Double.NaN, 0, 1, 1, Ink.BAND))
            .hasMessageContaining("finite number, got NaN");
    }
}
