package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static surfeit.Vectors.tolerance;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.Vectors;

class BackgroundTest {

    @Test
    void sigma_of_net_counts_reaches_the_mass_fraction_like_in_an_independent_computation() {
        JsonNode vector = Vectors.read("14-counts-sigma");
        double[] net = Vectors.doubles(vector.at("/input/net"));
        double[] background = Vectors.doubles(vector.at("/input/background"));
        double[] k = Vectors.doubles(vector.at("/input/k_factor_relative"));
        double[] expected = Vectors.doubles(vector.at("/expected/sigma_net"));
        double[] sigma = new double[2];
        for (int i = 0; i < 2; i++) {
            sigma[i] = Background.PAIRED.sigmaOfNet(net[i], background[i]);
            assertThat(sigma[i]).isCloseTo(expected[i], tolerance(vector, expected[i]));
        }
        double fraction = k[0] * net[0] / (k[0] * net[0] + k[1] * net[1]);
        double u = fraction * (1 - fraction) * Math.hypot(sigma[0] / net[0], sigma[1] / net[1]);
        assertThat(fraction).isCloseTo(vector.at("/expected/mass_fraction").doubleValue(), tolerance(vector, fraction));
        assertThat(u).isCloseTo(vector.at("/expected/u_mass_fraction").doubleValue(), tolerance(vector, u));
        assertThat(Background.PAIRED.decisionThreshold(background[0]))
            .isCloseTo(vector.at("/expected/L_C_counts").doubleValue(), tolerance(vector, 80));
        assertThat(Background.PAIRED.detectionLimit(background[0]))
            .isCloseTo(vector.at("/expected/L_D_counts").doubleValue(), tolerance(vector, 160));
    }

    /**
     * Currie (1968), Table II: paired L_C = 2.33 √B and L_D = 2.71 + 4.65 √B, well-known 1.64 √B and 2.71 + 3.29 √B
     * (from memory), worked out with z = 1.645, which is 0.01 % above the exact one.
     */
    @ParameterizedTest
    @CsvSource({"1, 2.33, 7.36, 1.64, 6.00", "10, 7.36, 17.42, 5.20, 13.11", "100, 23.26, 49.24, 16.45, 35.61",
        "1000, 73.6, 149.8, 52.0, 106.7", "10000, 232.6, 468.0, 164.5, 331.7"})
    void thresholds_and_limits_are_those_of_the_table(double background, double pairedThreshold, double pairedLimit,
                                                      double knownThreshold, double knownLimit) {
        double digit = (background < 1000 ? 0.005 : 0.05) + 1.5e-4 * pairedLimit;
        assertThat(Background.PAIRED.decisionThreshold(background)).isCloseTo(pairedThreshold, within(digit));
        assertThat(Background.PAIRED.detectionLimit(background)).isCloseTo(pairedLimit, within(digit));
        assertThat(Background.WELL_KNOWN.decisionThreshold(background)).isCloseTo(knownThreshold, within(digit));
        assertThat(Background.WELL_KNOWN.detectionLimit(background)).isCloseTo(knownLimit, within(digit));
    }

    @Test
    void without_background_the_limit_is_2_71_counts_and_the_sigma_the_root_of_the_counts() {
        assertThat(Background.PAIRED.detectionLimit(0)).isCloseTo(2.70554, within(5e-6));
        assertThat(Background.PAIRED.detectionLimit(1) - Background.PAIRED.detectionLimit(0))
            .isCloseTo(4.652348, within(2e-6));
        assertThat(Background.WELL_KNOWN.sigmaOfNet(10_000, 0)).isEqualTo(100);
        assertThat(Background.WELL_KNOWN.sigmaOfNet(84, 16)).isEqualTo(10);
    }

    @Test
    void negative_net_counts_leave_the_sigma_of_the_background() {
        assertThat(Background.PAIRED.sigmaOfNet(-5, 50)).isEqualTo(10);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1, Double.NaN, Double.POSITIVE_INFINITY})
    void what_is_no_count_is_refused(double counts) {
        assertThatThrownBy(() -> Background.PAIRED.detectionLimit(counts)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("Background counts are " + counts);
        assertThatThrownBy(() -> Background.PAIRED.sigmaOfNet(Double.NaN, 1))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("Net counts are NaN");
    }
}
