package surfeit.segregation.answer;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresTest {

    @ParameterizedTest
    @CsvSource({"23.902, 3, 23.9", "0.11046, 3, 0.110", "1234, 2, 1200", "135.9, 2, 140", "0, 3, 0", "-0.5, 2, -0.50",
        "99.97, 3, 100.0", "100, 3, 100", "2.04e-6, 2, 0.0000020", "1e-20, 2, 0.000000000000", "8.76, 2, 8.8"})
    void so_many_significant_digits_and_no_exponent(double value, int digits, String text) {
        assertThat(Figures.of(value, digits)).isEqualTo(text);
    }

    @Test
    void what_has_no_digits_is_named() {
        assertThat(Figures.of(Double.POSITIVE_INFINITY, 2)).isEqualTo("Infinity");
        assertThat(Figures.of(Double.NaN, 2)).isEqualTo("NaN");
    }

    @Test
    void decimals_are_those_of_the_java_formatter() {
        Random random = new Random(9);
        for (int i = 0; i < 1000; i++) {
            double value = random.nextInt(2_000_000) / 1e4 - 100;
            if (Math.abs(value * 100 - Math.rint(value * 100)) < 0.49) {
                assertThat(Figures.fixed(value, 2).replace("-0.00", "0.00"))
                    .isEqualTo(String.format(Locale.ROOT, "%.2f", value).replace("-0.00", "0.00"));
            }
        }
        assertThat(Figures.fixed(-1.5, 0)).isEqualTo("-2");
    }
}
