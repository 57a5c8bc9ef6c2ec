package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static surfeit.Vectors.tolerance;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.Vectors;

class CombinedErrorTest {

    @ParameterizedTest
    @ValueSource(strings = {"19-combine-k3", "20-combine-k3-random-floor", "21-combine-k10", "22-combine-nosys"})
    void interval_and_p_agree_with_an_independent_computation(String name) {
        JsonNode vector = Vectors.read(name);
        JsonNode input = vector.path("input");
        JsonNode expected = vector.path("expected");
        double s = input.path("s").doubleValue();
        double df = input.path("df").doubleValue();
        double u = input.path("u").doubleValue();
        double nu = expected.path("nu_eff").doubleValue();
        double half = expected.path("half_width").doubleValue();
        double p = expected.path("p").doubleValue();
        assertThat(CombinedError.degreesOfFreedom(s, df, u)).isCloseTo(nu, tolerance(vector, nu));
        assertThat(CombinedError.halfWidth(s, df, u, input.path("conf").doubleValue()))
            .isCloseTo(half, tolerance(vector, half));
        assertThat(CombinedError.twoSidedP(input.path("theta").doubleValue(), s, df, u))
            .isCloseTo(p, tolerance(vector, p));
    }

    @Test
    void the_interval_ends_where_p_is_5_percent() {
        for (double df : new double[]{1, 2, 3.4, 9, 1e3, Double.POSITIVE_INFINITY}) {
            for (double u : new double[]{0, 0.01, 0.3, 1, 4}) {
                double h = CombinedError.halfWidth(1, df, u, 0.95);
                assertThat(CombinedError.twoSidedP(h, 1, df, u)).as("df %s, u %s", df, u)
                    .isCloseTo(0.05, within(1e-12));
                assertThat(CombinedError.twoSidedP(-h, 1, df, u)).isCloseTo(0.05, within(1e-12));
            }
        }
    }

    @Test
    void a_shared_error_never_makes_the_interval_narrower() {
        for (double u = 0; u < 5; u += 0.01) {
            assertThat(CombinedError.halfWidth(1, 2, u, 0.95)).isGreaterThanOrEqualTo(StudentT.quantile(0.975, 2));
            assertThat(CombinedError.halfWidth(1, 2, u, 0.95)).isGreaterThan(1.9599 * Math.hypot(1, u));
        }
    }

    @Test
    void without_random_error_the_normal_distribution_and_the_shared_error_decide() {
        assertThat(CombinedError.degreesOfFreedom(0, 2, 0.1)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(CombinedError.halfWidth(0, 2, 0.1, 0.95)).isCloseTo(0.195996398454, within(1e-12));
        assertThat(CombinedError.twoSidedP(0.2, 0, 2, 0.1)).isCloseTo(0.0455002638963584, within(1e-14));
        assertThat(CombinedError.twoSidedP(0, 0, 2, 0.1)).isEqualTo(1);
        assertThat(CombinedError.twoSidedP(0.2, RandomPart.known(0), 0.1)).isCloseTo(0.0455002638963584, within(1e-14));
    }

    @Test
    void a_one_sided_p_is_half_the_two_sided_on_its_side_and_the_rest_on_the_other() {
        RandomPart random = new RandomPart(0.06, 2);
        double p = CombinedError.twoSidedP(0.35, random, 0.09);
        assertThat(CombinedError.oneSidedP(0.35, random, 0.09)).isEqualTo(p / 2);
        assertThat(CombinedError.oneSidedP(-0.35, random, 0.09)).isEqualTo(1 - p / 2);
        assertThat(CombinedError.oneSidedP(0, random, 0.09)).isEqualTo(0.5);
        assertThat(CombinedError.oneSidedP(Double.POSITIVE_INFINITY, random, 0.09)).isZero();
    }

    @Test
    void where_nothing_is_uncertain_no_probability_is_made_up() {
        assertThatThrownBy(() -> CombinedError.twoSidedP(0.1, 0, 3, 0)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("both 0");
        assertThatThrownBy(() -> CombinedError.halfWidth(0, 3, 0, 0.95)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @CsvSource({"-1, 3, 0", "1, 0, 0", "1, 3, -0.1", "NaN, 3, 0", "1, 3, NaN", "Infinity, 3, 0", "1, NaN, 0"})
    void impossible_errors_are_refused(double s, double df, double u) {
        assertThatThrownBy(() -> CombinedError.twoSidedP(1, s, df, u)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("must be 0 or above");
    }

    @Test
    void a_distance_that_is_no_number_is_refused() {
        assertThatThrownBy(() -> CombinedError.twoSidedP(Double.NaN, 1, 3, 0))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("not a number");
    }

    /** 40 000 draws, fixed seed: the noise of the share is 0.11 points, so 1 point either way is ample. */
    @ParameterizedTest
    @CsvSource({"3, 0", "3, 0.3", "3, 1", "3, 4", "5, 1", "10, 0.6"})
    void the_95_percent_interval_holds_the_truth_in_95_percent_of_simulated_studies(int particles, double shared) {
        Random random = new Random(20_261_124L + particles);
        int draws = 40_000;
        int held = 0;
        for (int i = 0; i < draws; i++) {
            Moments means = new Moments();
            for (int j = 0; j < particles; j++) {
                means.add(random.nextGaussian() * Math.sqrt(particles));
            }
            double estimate = means.mean() + shared * random.nextGaussian();
            double s = Math.sqrt(means.variance() / particles);
            held += Math.abs(estimate) <= CombinedError.halfWidth(s, particles - 1, shared, 0.95) ? 1 : 0;
        }
        assertThat(100.0 * held / draws).isBetween(94.0, 96.0);
    }

    /** Two one-sided tests, Schuirmann (1987), from memory. */
    private static double pOutside(double estimate, double margin, RandomPart random, double u) {
        return Math.max(CombinedError.oneSidedP(estimate + margin, random, u),
            CombinedError.oneSidedP(margin - estimate, random, u));
    }

    @Test
    void two_one_sided_p_values_show_particles_near_the_nominal_to_lie_inside_the_margin() {
        JsonNode vector = Vectors.read("42-tost-equivalent");
        double[] theta = Vectors.doubles(vector.at("/input/theta_per_particle"));
        double margin = vector.at("/input/margin").doubleValue();
        RandomPart random = RandomPart.ofMean(theta);
        double mean = Moments.of(theta).mean();
        double p = vector.at("/expected/p_tost").doubleValue();
        double twoSided = vector.at("/expected/p_two_sided").doubleValue();
        double[] interval = Vectors.doubles(vector.at("/expected/ci90"));
        assertThat(pOutside(mean, margin, random, 0)).isCloseTo(p, tolerance(vector, p));
        assertThat(CombinedError.twoSidedP(mean, random, 0)).isCloseTo(twoSided, tolerance(vector, twoSided));
        double half = CombinedError.halfWidth(random, 0, 0.90);
        assertThat(mean - half).isCloseTo(interval[0], tolerance(vector, interval[0]));
        assertThat(mean + half).isCloseTo(interval[1], tolerance(vector, interval[1]));
    }

    @Test
    void both_one_sided_p_values_are_at_most_5_percent_exactly_where_the_90_percent_interval_lies_inside() {
        double margin = Math.log(1.25);
        RandomPart random = new RandomPart(0.04, 3);
        for (double u : new double[]{0, 0.05, 0.13}) {
            double half = CombinedError.halfWidth(random, u, 0.90);
            for (double estimate = -0.3; estimate < 0.3; estimate += 0.0037) {
                boolean inside = estimate - half > -margin && estimate + half < margin;
                assertThat(pOutside(estimate, margin, random, u) <= 0.05).as("estimate %s, u %s", estimate, u)
                    .isEqualTo(inside);
            }
        }
    }
}
