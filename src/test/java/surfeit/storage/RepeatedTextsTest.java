package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class RepeatedTextsTest {
    private static final RepeatedTexts ALL_TRIES = new RepeatedTexts();

    private static String read(RepeatedTexts texts, String text) {
        byte[] bytes = ("«" + text + "»").getBytes(StandardCharsets.ISO_8859_1);
        return texts.of(bytes, 1, text.length());
    }

    @Property
    void every_text_comes_back_whatever_was_read_before(@ForAll @CharRange(from = 0, to = 0xff) String text) {
        assertThat(read(ALL_TRIES, text)).isEqualTo(text);
    }

    @Property
    void texts_that_share_a_place_are_told_apart(@ForAll @IntRange(max = 100_000) int number) {
        assertThat(read(ALL_TRIES, "P" + number)).isEqualTo("P" + number);
        assertThat(read(ALL_TRIES, "")).isEmpty();
    }

    @Test
    void a_text_read_again_is_the_same_one() {
        RepeatedTexts texts = new RepeatedTexts();
        assertThat(read(texts, "dark patch")).isSameAs(read(texts, "dark patch"));
    }
}
