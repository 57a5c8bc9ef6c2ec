package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FDistributionTest {

    /** Upper critical values found in every text book (NIST/SEMATECH e-Handbook 1.3.6.7.3; from memory). */
    @ParameterizedTest
    @CsvSource({"3.708, 3, 10, 0.05", "3.326, 5, 10, 0.05", "4.103, 2, 10, 0.05", "13.274, 2, 5, 0.01",
        "4.965, 1, 10, 0.05"})
    void survival_is_that_of_the_table(double f, double d1, double d2, double expected) {
        assertThat(FDistribution.survival(f, d1, d2)).isCloseTo(expected, within(expected * 0.005));
    }

    @Test
    void with_one_degree_of_freedom_above_it_is_the_square_of_t() {
        for (double t = 0.1; t < 20; t *= 1.5) {
            assertThat(FDistribution.survival(t * t, 1, 7.5)).isCloseTo(StudentT.twoSidedP(t, 7.5), within(1e-13));
        }
    }

    @Test
    void the_ends_are_0_and_1_and_anything_below_is_refused() {
        assertThat(FDistribution.survival(0, 2, 4)).isEqualTo(1);
        assertThat(FDistribution.survival(Double.POSITIVE_INFINITY, 2, 4)).isZero();
        assertThatThrownBy(() -> FDistribution.survival(-0.1, 2, 4)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("F is -0.1");
    }
}
