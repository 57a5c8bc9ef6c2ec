package surfeit.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.segregation.answer.Estimate;

class DigitsTest {

    /** JCGM 100:2008 section 7.2.6: 10.05762 ohm with 27 mohm is rounded to 10.058 ohm, and 28.05 kHz to 28 kHz. */
    @Test
    void a_value_is_rounded_as_the_guide_to_uncertainty_shows() {
        assertThat(Digits.rounded(10.05762, 0.027)).isEqualTo("10.058");
        assertThat(Digits.rounded(28.05, 28.05)).isEqualTo("28");
    }

    @Test
    void percent_keeps_two_significant_digits_of_the_uncertainty() {
        assertThat(Digits.percent(0.7812345, 0.00931, Signs.ASCII)).isEqualTo("78.12 +- 0.93");
        assertThat(Digits.percent(0.7812345, 0.05, Signs.UNICODE)).isEqualTo("78.1 \u00b1 5.0");
        assertThat(Digits.percent(0.7812345, 0.131, Signs.ASCII)).isEqualTo("78 +- 13");
        assertThat(Digits.percent(-0.0004, 0.0002, Signs.ASCII)).isEqualTo("-0.040 +- 0.020");
    }

    @Test
    void an_uncertainty_that_rounds_up_to_the_next_power_of_ten_loses_a_place() {
        assertThat(Digits.rounded(78.1234, 0.0996)).isEqualTo("78.12");
        assertThat(Digits.rounded(78.1234, 0.996)).isEqualTo("78.1");
    }

    @Test
    void without_an_uncertainty_a_percentage_shows_hundredths() {
        assertThat(Digits.percent(0.78123, 0, Signs.ASCII)).isEqualTo("78.12 +- 0.00");
        assertThat(Digits.rounded(78.123, Double.NaN)).isEqualTo("78.12");
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "1.3121; 1.1234; 1.5178; 1.31 (1.12 to 1.52)",
        "1.0313; 1.0221; 1.0405; 1.0313 (1.0221 to 1.0405)",
        "8.42; 1.21; 60.4; 8.4 (1.2 to 60)",
        "0.121; 0; 0.4321; 0.12 (0.00 to 0.43)",
        "31.4; 2.04; 480; 31 (2.0 to 480)",
    })
    void the_half_width_sets_the_places_and_no_end_vanishes(double value, double low, double high, String text) {
        assertThat(Digits.interval(new Estimate(value, low, high))).isEqualTo(text);
    }

    @Test
    void an_end_just_beside_one_is_not_printed_as_one() {
        assertThat(Digits.interval(new Estimate(1.36, 1.0041, 1.71))).isEqualTo("1.36 (1.004 to 1.71)");
        assertThat(Digits.interval(new Estimate(0.8, 0.6, 0.99996))).isEqualTo("0.80 (0.60 to 0.99996)");
        assertThat(Digits.interval(new Estimate(1.2, 1, 1.4))).isEqualTo("1.20 (1.00 to 1.40)");
    }

    @Test
    void an_end_without_a_bound_is_said_in_words() {
        double infinite = Double.POSITIVE_INFINITY;
        assertThat(Digits.interval(new Estimate(3.14, 1.42, infinite))).isEqualTo("3.1 (at least 1.4, no upper bound)");
        assertThat(Digits.interval(new Estimate(0.31, -infinite, 0.82)))
            .isEqualTo("0.31 (no lower bound, at most 0.82)");
        assertThat(Digits.interval(new Estimate(1.7, -infinite, infinite))).isEqualTo("1.7 (no bounds)");
        assertThat(Digits.rounded(infinite, 1)).isEqualTo("no upper bound");
        assertThat(Digits.rounded(-infinite, 1)).isEqualTo("no lower bound");
        assertThat(Digits.rounded(Double.NaN, 1)).isEqualTo("not known");
    }

    @ParameterizedTest
    @CsvSource({"0.00009, p < 0.001", "0, p < 0.001", "0.0012345, p = 0.0012", "0.0694, p = 0.069", "0.5, p = 0.50",
        "0.996, p > 0.99",
        "1, p > 0.99"})
    void a_p_value_has_two_digits_or_is_small(double p, String text) {
        assertThat(Digits.pValue(p)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({"0.05, 20", "0.0012, 830", "0.031, 32", "0.6, 1", "1, 1", "0.0000001, 1000", "0.001, 1000",
        "0.00999, 100"})
    void one_in_n_is_rounded_down_so_that_at_most_stays_true(double p, String n) {
        assertThat(Digits.oneIn(p)).isEqualTo(n);
    }

    @ParameterizedTest
    @CsvSource({"1.8521, 1.86", "1.2500000000000002, 1.25", "12.31, 12.4", "132.1, 133", "1321, 1330"})
    void a_bound_is_rounded_up_so_that_it_stays_true(double bound, String text) {
        assertThat(Digits.upperBound(bound)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({"0.601, 60.1", "0.399123, 39.91", "0.0005, 0.05", "0.00000512, 0.00051", "0, 0", "1, 100"})
    void a_nominal_shows_two_places_or_two_digits_and_no_trailing_zeros(double fraction, String text) {
        assertThat(Digits.nominalPercent(fraction)).isEqualTo(text);
    }

    @Test
    void a_difference_carries_its_sign() {
        assertThat(Digits.signedPercent(0.0796, 0.043)).isEqualTo("+8.0");
        assertThat(Digits.signedPercent(-0.0796, 0.043)).isEqualTo("-8.0");
        assertThat(Digits.signedPercent(0, 0.043)).isEqualTo("0.0");
    }

    @Test
    void only_a_tiny_number_gets_a_power_of_ten() {
        assertThat(Digits.rounded(0.000012, 0.000001)).isEqualTo("0.000012");
        assertThat(Digits.rounded(1.23e-9, 1e-10)).isEqualTo("1.2E-9");
        assertThat(Digits.rounded(1.23e7, 100)).isEqualTo("12300000");
    }
}
