package surfeit.element;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class SpellingTest {
    private static final List<String> WORDS = List.of("particle", "position", "feature", "session", "label");

    @Test
    void a_letter_changed_left_out_put_in_or_swapped_still_finds_the_word() {
        assertThat(Spelling.nearest("fxature", WORDS, 1)).containsExactly("feature");
        assertThat(Spelling.nearest("fature", WORDS, 1)).containsExactly("feature");
        assertThat(Spelling.nearest("feeature", WORDS, 1)).containsExactly("feature");
        assertThat(Spelling.nearest("faeture", WORDS, 1)).containsExactly("feature");
        assertThat(Spelling.nearest("lable", WORDS, 1)).as("one letter may differ of five").containsExactly("label");
        assertThat(Spelling.nearest("lbale", WORDS, 1)).isEmpty();
        assertThat(Spelling.nearest("LABEL", WORDS, 1)).containsExactly("label");
    }

    @Test
    void nothing_is_suggested_for_what_is_far_from_every_word() {
        assertThat(Spelling.nearest("beam energy", WORDS, 3)).isEmpty();
        assertThat(Spelling.nearest("", WORDS, 3)).isEmpty();
        assertThat(Spelling.nearest("label".repeat(100), WORDS, 3)).isEmpty();
    }

    @Test
    void the_nearest_word_comes_first() {
        assertThat(Spelling.nearest("pasition", List.of("partition", "position"), 2))
            .containsExactly("position", "partition");
    }

    @Test
    void a_quoted_text_is_short_and_on_one_line() {
        assertThat(Spelling.quoted("Ag\r\nX")).isEqualTo("\"Ag  X\"");
        assertThat(Spelling.quoted("x".repeat(40))).isEqualTo('"' + "x".repeat(40) + '"');
        assertThat(Spelling.quoted("x".repeat(41))).isEqualTo('"' + "x".repeat(40) + "…\"");
        assertThat(Spelling.quoted("x".repeat(100))).isEqualTo('"' + "x".repeat(40) + "…\"");
    }
}
