package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NumberReaderTest {

    @ParameterizedTest
    @CsvSource({"62.40, 0.624", "0.3, 0.003", "100, 1", "-0.02, -0.0002", "+5, 0.05", ".5, 0.005", "5., 0.05",
        "1.2E-05, 1.2e-7",
        "6.24e+01, 0.624", "6.24E1, 0.624", "1e-99, 1e-101",
        "\u22120.3, -0.003", "0.1000000000000000055511151231257827, 0.001"})
    void a_percentage_becomes_the_nearest_fraction(String text, double fraction) {
        assertThat(NumberReader.detecting().percentAsFraction(text)).isEqualTo(fraction);
    }

    @Property
    void a_percentage_is_rounded_once_and_correctly(@ForAll long digits,
        @ForAll @IntRange(min = 0, max = 18) int decimals) {
        BigDecimal printed = BigDecimal.valueOf(digits, decimals);

        assertThat(NumberReader.withMark('.').percentAsFraction(printed.toPlainString()))
            .isEqualTo(Double.parseDouble(printed.movePointLeft(2).toPlainString()));
    }

    @Property
    void point_and_comma_give_the_same_number(@ForAll @LongRange(min = -99_999, max = 99_999) long digits) {
        String printed = BigDecimal.valueOf(digits, 2).toPlainString();

        assertThat(NumberReader.withMark(',').number(printed.replace('.', ',')))
            .isEqualTo(NumberReader.withMark('.').number(printed));
    }

    @Test
    void the_first_mark_decides_for_the_whole_upload() {
        NumberReader numbers = NumberReader.detecting();
        numbers.percentAsFraction("62");
        assertThat(numbers.mark()).isEmpty();
        numbers.percentAsFraction("62,4");
        assertThat(numbers.mark()).contains(',');

        assertThatThrownBy(() -> numbers.percentAsFraction("37.6")).isInstanceOf(Refusal.class)
            .hasMessage("Expected the decimal mark , of this upload (\"62,4\" has it), found \"37.6\".")
            .extracting(refusal -> ((Refusal) refusal).code()).isEqualTo(FaultCode.MIXED_DECIMAL_MARKS);
    }

    @ParameterizedTest
    @ValueSource(strings = {"1.234,5", "1,234.5", "1,234,567", "1'234", "12 345,6", "1\u00A0234", "1.2.3"})
    void thousands_separators_are_refused_and_decide_nothing(String text) {
        NumberReader numbers = NumberReader.detecting();

        assertThatThrownBy(() -> numbers.number(text)).isInstanceOf(Refusal.class)
            .extracting(refusal -> ((Refusal) refusal).code()).isEqualTo(FaultCode.MIXED_DECIMAL_MARKS);
        assertThat(numbers.mark()).isEmpty();
    }

    @Test
    void a_count_that_may_be_a_thousand_is_refused_until_the_mark_is_certain() {
        NumberReader numbers = NumberReader.detecting();
        assertThatThrownBy(() -> numbers.number("12,345")).isInstanceOf(Refusal.class)
            .hasMessageContaining("state the decimal mark");

        numbers.percentAsFraction("62,4");
        assertThat(numbers.number("12,345")).isEqualTo(12.345);
        assertThat(NumberReader.withMark(',').number("12,345")).isEqualTo(12.345);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-", ".", "abc", "NaN", "Infinity", "-Infinity", "0x1F", "1e", "1e400", "1e-400",
        "1e100", "e5", "1e+", "1e5x",
        "62.4%", "1d", "1f",
        "\u0661\u0662", "--5", "5-", "1_000", "62.4 at%"})
    void what_is_no_plain_number_is_refused(String text) {
        assertThatThrownBy(() -> NumberReader.detecting().number(text)).isInstanceOf(Refusal.class)
            .extracting(refusal -> ((Refusal) refusal).code()).isEqualTo(FaultCode.VALUE_OUT_OF_RANGE);
    }

    @Test
    void a_very_long_number_is_refused_by_its_length() {
        assertThat(NumberReader.detecting().number("0".repeat(39) + "7")).isEqualTo(7);
        assertThatThrownBy(() -> NumberReader.detecting().number("0".repeat(40) + "7")).isInstanceOf(Refusal.class)
            .hasMessage("Expected a number of at most 40 characters, found 41.");
        assertThatThrownBy(() -> NumberReader.detecting().number("1".repeat(1_000_000))).isInstanceOf(Refusal.class)
            .hasMessage("Expected a number of at most 40 characters, found 1000000.");
    }
}
