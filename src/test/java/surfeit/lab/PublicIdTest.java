package surfeit.lab;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PublicIdTest {

    @Test
    void digits_are_those_of_crockford_without_letters_that_look_like_digits() {
        assertThat(PublicId.of("spt_", 1)).isEqualTo("spt_0001");
        assertThat(PublicId.of("spt_", 31)).isEqualTo("spt_000Z");
        assertThat(PublicId.of("spt_", 32)).isEqualTo("spt_0010");
        assertThat(PublicId.of("imp_", 32L * 32 * 32 * 32)).isEqualTo("imp_10000");
    }

    @Property
    void a_number_comes_back_from_its_id(@ForAll @LongRange(min = 0, max = (1L << 60) - 1) long number) {
        assertThat(PublicId.number("spt_", PublicId.of("spt_", number))).hasValue(number);
    }

    @Property
    void no_two_texts_name_one_number(@ForAll @StringLength(max = 14) String text) {
        PublicId.number("spt_", "spt_" + text).ifPresent(number ->
            assertThat(PublicId.of("spt_", number)).isEqualTo("spt_" + text));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "spt_", "spt_1", "spt_000z", "spt_00001", "spt_000U", "imp_0001", "spt_0001 ",
        "spt_0000000000001", "xxx_0001"})
    void other_texts_are_no_spot_ids(String text) {
        assertThat(PublicId.number("spt_", text)).isEmpty();
    }
}
