package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.special.Erf;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NormalDistributionTest {

    /** Expected: mpmath 1.3.0, erfc at 30 digits. */
    @ParameterizedTest
    @CsvSource({"0.3, 0.38208857781104737", "1, 0.15865525393145705", "2, 0.022750131948179207",
        "5, 2.8665157187919391e-7", "10, 7.6198530241605261e-24", "20, 2.7536241186062337e-89",
        "37, 5.7255712225245768e-300"})
    void tails_keep_their_relative_accuracy(double z, double expected) {
        assertThat(NormalDistribution.survival(z)).isCloseTo(expected, within(1e-12 * expected));
        assertThat(NormalDistribution.cdf(-z)).isEqualTo(NormalDistribution.survival(z));
        assertThat(NormalDistribution.twoSidedP(-z)).isCloseTo(2 * expected, within(2e-12 * expected));
    }

    /** Expected: erfc of the GNU C library 2.36, on either side of where one way to work it out gives way to another. */
    @ParameterizedTest
    @CsvSource({"1.5, 0.06680720126885809", "3.3, 0.0004834241423837776", "5.6, 1.0717590258310968e-08",
        "5.7, 5.990371401063533e-09"})
    void tails_keep_nearly_all_digits(double z, double expected) {
        assertThat(NormalDistribution.survival(z)).isCloseTo(expected, within(2e-14 * expected));
    }

    @Test
    void agrees_with_commons_math_on_a_grid() {
        for (double z = -9; z <= 9; z += 0.013) {
            assertThat(NormalDistribution.cdf(z)).as("z = %s", z)
                .isCloseTo(0.5 * Erf.erfc(-z / Math.sqrt(2)), within(1e-13));
        }
    }

    /** Every table of the normal distribution; digits as in Abramowitz and Stegun (1964), 26.2 and table 26.5. */
    @ParameterizedTest
    @CsvSource({"0.80, 0.84162", "0.90, 1.28155", "0.95, 1.64485", "0.975, 1.95996", "0.99, 2.32635", "0.995, 2.57583",
        "0.9995, 3.29053"})
    void quantiles_are_those_of_the_tables(double probability, double expected) {
        assertThat(NormalDistribution.quantile(probability)).isCloseTo(expected, within(5e-6));
    }

    @Test
    void quantile_and_cdf_undo_each_other() {
        for (double tail = 1e-300; tail < 0.5; tail *= 1.7) {
            double z = NormalDistribution.quantile(tail);
            assertThat(NormalDistribution.cdf(z)).as("tail %s", tail).isCloseTo(tail, within(1e-11 * tail));
            assertThat(NormalDistribution.quantile(NormalDistribution.cdf(z))).isCloseTo(z, within(1e-13 * -z));
        }
        assertThat(NormalDistribution.quantile(0.5)).isZero();
        assertThat(NormalDistribution.quantile(0.5 + 1e-9)).isCloseTo(1e-9 * Math.sqrt(2 * Math.PI), within(1e-15));
    }

    @Test
    void far_out_the_probability_is_0_or_1_and_nothing_else() {
        assertThat(NormalDistribution.survival(40)).isZero();
        assertThat(NormalDistribution.survival(-40)).isEqualTo(1);
        assertThat(NormalDistribution.survival(Double.POSITIVE_INFINITY)).isZero();
        assertThat(NormalDistribution.survival(Double.NEGATIVE_INFINITY)).isEqualTo(1);
        assertThat(NormalDistribution.survival(Double.NaN)).isNaN();
    }

    @ParameterizedTest
    @CsvSource({"0", "1", "-0.1", "NaN"})
    void a_quantile_of_no_probability_is_refused(double probability) {
        assertThatThrownBy(() -> NormalDistribution.quantile(probability))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("must lie between 0 and 1");
    }
}
