package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class QuantileCurveTest {

    @ParameterizedTest
    @ValueSource(doubles = {0.6, 0.8, 0.9, 0.95, 0.975, 0.995, 0.9995, 0.99999, 0.999999})
    void it_follows_the_quantile_solved_for(double probability) {
        QuantileCurve curve = QuantileCurve.of(probability);
        for (double df = 1; df < 1e7; df *= 1.07) {
            double exact = StudentT.quantile(probability, df);
            assertThat(curve.at(df)).as("%s degrees of freedom", df).isCloseTo(exact, within(1e-10 * exact));
        }
    }

    /** Published tables of Student's t: 12.706 and 2.571 at 1 and 5 degrees of freedom, 1.960 for the normal. */
    @Test
    void it_ends_in_the_tabulated_values() {
        QuantileCurve curve = QuantileCurve.of(0.975);
        assertThat(curve.at(1)).isCloseTo(12.706, within(5e-4));
        assertThat(curve.at(5)).isCloseTo(2.571, within(5e-4));
        assertThat(curve.at(Double.POSITIVE_INFINITY)).isCloseTo(1.959964, within(5e-7));
    }

    @Test
    void more_probabilities_than_are_kept_do_no_harm() {
        for (int i = 1; i <= 200; i++) {
            double probability = 0.9 + i * 4e-4;
            double exact = StudentT.quantile(probability, 7);
            assertThat(QuantileCurve.of(probability).at(7)).isCloseTo(exact, within(1e-10 * exact));
        }
    }

    @Test
    void a_probability_outside_the_upper_half_is_refused() {
        assertThatThrownBy(() -> QuantileCurve.of(0.5)).hasMessageContaining("must lie between 0.5 and 1");
        assertThatThrownBy(() -> QuantileCurve.of(1)).isInstanceOf(IllegalArgumentException.class);
    }
}
