package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.math3.special.Beta;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StudentTTest {

    private static final double[] DEGREES_OF_FREEDOM =
        {0.3, 1, 1.5, 2, 2.469, 3, 4.7, 5, 8, 11.15, 16.76, 24, 30.2, 60, 120, 1000, 1e5};

    /** Up to 1000 degrees of freedom: above, the other library loses digits where df/(df+t²) nears 1. */
    @Test
    void agrees_with_commons_math_on_a_grid() {
        for (double df : Arrays.stream(DEGREES_OF_FREEDOM).filter(d -> d <= 1000).toArray()) {
            for (double t = 0.01; t < 60; t *= 1.07) {
                double expected = Beta.regularizedBeta(df / (df + t * t), df / 2, 0.5);
                double p = StudentT.twoSidedP(t, df);
                assertThat(p).as("t = %s, df = %s", t, df).isCloseTo(expected, within(1e-10));
                assertThat(p).as("t = %s, df = %s", t, df).isCloseTo(expected, within(1e-8 * expected));
            }
        }
    }

    /** Expected: mpmath 1.3.0 at 30 digits, by the incomplete beta function or by integrating the density. */
    @ParameterizedTest
    @CsvSource({"0.5, 10, 0.20267735277133114", "1, 0.5, 0.70483276469913345", "2, 30, 0.0011092626819596589",
        "3, 1.4, 0.25600732874811398", "2.4691358, 5.5, 0.019344204258692421", "7.5, 0.3, 0.77232265856877809",
        "16.76, 2.92, 0.0096551041807169293", "25, 40, 3.4699802777591578e-24", "300, 8, 2.7350153901538422e-14",
        "5000, 2.4, 0.016431418580313958", "1e5, 0.01, 0.99202130731882316", "1e5, 9, 2.295409005023157e-19",
        "1e7, 2.6, 0.0093223897499410552"})
    void tails_keep_their_relative_accuracy(double df, double t, double expected) {
        assertThat(StudentT.twoSidedP(t, df)).isCloseTo(expected, within(1e-13 * expected));
        assertThat(StudentT.twoSidedP(-t, df)).isCloseTo(expected, within(1e-13 * expected));
        assertThat(StudentT.survival(t, df)).isCloseTo(expected / 2, within(1e-13 * expected));
        assertThat(StudentT.survival(-t, df)).isCloseTo(1 - expected / 2, within(1e-15));
    }

    /** Closed forms for 1 and 2 degrees of freedom. */
    @Test
    void one_and_two_degrees_of_freedom_follow_their_closed_forms() {
        for (double t = 1e-6; t < 1e6; t *= 2.3) {
            assertThat(StudentT.twoSidedP(t, 1)).isCloseTo(2 / Math.PI * Math.atan(1 / t), within(1e-14));
            double root = Math.sqrt(2 + t * t);
            assertThat(StudentT.twoSidedP(t, 2)).isCloseTo(2 / (root * (root + t)), within(1e-14));
            assertThat(StudentT.density(t, 1)).isCloseTo(1 / (Math.PI * (1 + t * t)), within(1e-15));
        }
        assertThat(StudentT.quantile(0.9, 1)).isCloseTo(Math.tan(0.4 * Math.PI), within(1e-13));
        assertThat(StudentT.quantile(0.9, 2)).isCloseTo(0.8 / Math.sqrt(2 * 0.9 * 0.1), within(1e-13));
    }

    /** Upper critical values found in every text book (NIST/SEMATECH e-Handbook 1.3.6.7.2; from memory). */
    @ParameterizedTest
    @CsvSource({"1, 6.314, 12.706, 63.657", "2, 2.920, 4.303, 9.925", "3, 2.353, 3.182, 5.841",
        "4, 2.132, 2.776, 4.604", "5, 2.015, 2.571, 4.032", "6, 1.943, 2.447, 3.707", "7, 1.895, 2.365, 3.499",
        "8, 1.860, 2.306, 3.355", "9, 1.833, 2.262, 3.250", "10, 1.812, 2.228, 3.169", "15, 1.753, 2.131, 2.947",
        "20, 1.725, 2.086, 2.845", "30, 1.697, 2.042, 2.750", "60, 1.671, 2.000, 2.660", "120, 1.658, 1.980, 2.617",
        "Infinity, 1.645, 1.960, 2.576"})
    void quantiles_are_those_of_the_t_table(double df, double t95, double t975, double t995) {
        assertThat(StudentT.quantile(0.95, df)).isCloseTo(t95, within(5.1e-4));
        assertThat(StudentT.quantile(0.975, df)).isCloseTo(t975, within(5.1e-4));
        assertThat(StudentT.quantile(0.995, df)).isCloseTo(t995, within(5.1e-4));
        assertThat(StudentT.quantile(0.025, df)).isCloseTo(-t975, within(5.1e-4));
    }

    @Test
    void quantile_and_p_undo_each_other() {
        for (double df : DEGREES_OF_FREEDOM) {
            for (double tail = 1e-15; tail < 0.5; tail *= 1.9) {
                double t = -StudentT.quantile(tail, df);
                assertThat(StudentT.survival(t, df)).as("tail %s, df %s", tail, df)
                    .isCloseTo(tail, within(1e-12 * tail));
            }
            for (double t = 1e-9; t < 1; t *= 3) {
                double share = 0.5 * StudentT.twoSidedCentral(t, df);
                assertThat(StudentTQuantile.upper(0.5 - share, df)).isCloseTo(t, within(1e-12 * t + 1e-15));
            }
            assertThat(StudentT.quantile(0.5, df)).isZero();
        }
    }

    @Test
    void both_ways_of_computing_p_meet_where_they_join() {
        for (double df : DEGREES_OF_FREEDOM) {
            double join = Math.sqrt(6 * df / (df + 6));
            double series = StudentT.twoSidedP(join * (1 - 1e-12), df);
            double fraction = StudentT.twoSidedP(join * (1 + 1e-12), df);
            assertThat(fraction).as("df = %s", df).isLessThanOrEqualTo(series)
                .isCloseTo(series, within(2e-11 * series));
        }
    }

    @Test
    void more_degrees_of_freedom_than_1e8_count_as_infinitely_many() {
        for (double t = 0; t < 8; t += 0.1) {
            double normal = NormalDistribution.twoSidedP(t);
            assertThat(StudentT.twoSidedP(t, 1e8)).isCloseTo(normal, within(1e-8));
            assertThat(StudentT.twoSidedP(t, 1.1e8)).isEqualTo(normal);
            assertThat(StudentT.twoSidedP(t, Double.POSITIVE_INFINITY)).isEqualTo(normal);
        }
        assertThat(StudentT.quantile(0.975, 1e9)).isEqualTo(NormalDistribution.quantile(0.975));
        assertThat(StudentT.density(1, 1e9)).isEqualTo(NormalDistribution.density(1));
    }

    @Test
    void extreme_arguments_give_the_limits() {
        assertThat(StudentT.twoSidedP(0, 3)).isEqualTo(1);
        assertThat(StudentT.twoSidedP(Double.POSITIVE_INFINITY, 3)).isZero();
        assertThat(StudentT.survival(Double.NEGATIVE_INFINITY, 3)).isEqualTo(1);
        assertThat(StudentT.twoSidedP(1e200, 0.5)).isGreaterThan(0).isLessThan(1e-99);
        assertThat(StudentT.quantile(1e-300, 1)).isCloseTo(-1e300 / Math.PI, within(1e287));
        assertThat(StudentT.quantile(1e-300, 0.1)).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(StudentT.twoSidedP(Double.NaN, 3)).isNaN();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN})
    void degrees_of_freedom_must_be_above_0(double df) {
        assertThatThrownBy(() -> StudentT.twoSidedP(1, df)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("Degrees of freedom are " + df);
        assertThatThrownBy(() -> StudentT.quantile(0.9, df)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, Double.NaN})
    void a_quantile_of_no_probability_is_refused(double probability) {
        assertThatThrownBy(() -> StudentT.quantile(probability, 3))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("must lie between 0 and 1");
    }

    @Test
    void with_many_degrees_of_freedom_the_expansion_meets_the_fraction() {
        for (double t = 2.5; t < 7; t += 0.01) {
            double fraction = StudentT.twoSidedP(t, 1000 * (1 - 1e-14));
            assertThat(StudentT.twoSidedP(t, 1000)).as("t = %s", t).isCloseTo(fraction, within(2e-13 * fraction));
        }
        for (double df = 1000; df <= 1e8; df *= 1.3) {
            double join = Math.sqrt(Math.min(256, df / 20));
            double fraction = StudentT.twoSidedP(join * (1 + 1e-15), df);
            assertThat(StudentT.twoSidedP(join * (1 - 1e-15), df)).as("df = %s", df)
                .isCloseTo(fraction, within(1e-12 * fraction));
        }
    }
}
