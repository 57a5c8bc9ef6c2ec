package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Random;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.Vectors;

class PowerTest {

    private static final Power USUAL = new Power(0.05, 0.8);

    /** The error of the mean of k particles with n spots each, {@code √(s_b²/k + s_w²/(k n))} on k - 1. */
    private static RandomPart design(double betweenParticles, double withinParticle, int particles, int spots) {
        double variance = betweenParticles * betweenParticles + withinParticle * withinParticle / spots;
        return new RandomPart(Math.sqrt(variance / particles), particles - 1);
    }

    @Test
    void without_a_shared_error_it_agrees_with_the_noncentral_t_distribution() {
        JsonNode vector = Vectors.read("44-power-noncentral-t");
        double[] expected = Vectors.doubles(vector.at("/expected/power"));
        int[] particles = Vectors.ints(vector.at("/input/particles"));
        for (int i = 0; i < particles.length; i++) {
            double power = USUAL.of(Math.log(1.5), design(0.15, 0.15, particles[i], 3), 0);
            assertThat(power).isCloseTo(expected[i], within(1e-4 * expected[i]));
        }
        assertThat(USUAL.particlesFor(Math.log(1.5), k -> design(0.15, 0.15, k, 3), 0, 1000))
            .hasValue(vector.at("/expected/particles_for_80").intValue());
    }

    @Test
    void with_a_shared_error_it_agrees_with_numerical_integration() {
        JsonNode vector = Vectors.read("45-power-with-systematic");
        double[] expected = Vectors.doubles(vector.at("/expected/power"));
        int[] particles = Vectors.ints(vector.at("/input/particles"));
        for (int i = 0; i < particles.length; i++) {
            double power = USUAL.of(Math.log(1.5), design(0.15, 0.15, particles[i], 3), 0.1);
            assertThat(power).isCloseTo(expected[i], Vectors.tolerance(vector, expected[i]));
        }
    }

    /** Cohen, Statistical Power Analysis (1988): 34 for half a standard deviation, power 0.81 (from memory). */
    @Test
    void half_a_standard_deviation_takes_the_34_of_the_published_tables() {
        assertThat(USUAL.particlesFor(0.5, k -> design(1, 0, k, 1), 0, 1000)).hasValue(34);
        assertThat(USUAL.of(0.5, design(1, 0, 34, 1), 0)).isCloseTo(0.808, within(5e-4));
    }

    /** G*Power 3 user guide, generic t test: one sample, N = 25, effect 0.25, two-sided 5 %: power 0.224525. */
    @Test
    void a_small_sample_has_the_power_of_a_published_example() {
        assertThat(USUAL.of(0.25, design(1, 0, 25, 1), 0)).isCloseTo(0.224525, within(3e-5));
    }

    /**
     * P. Dalgaard, Introductory Statistics with R, section 9.3: paired differences of standard deviation 14.14214, true
     * difference 10, power 0.85: n = 19.96892.
     */
    @Test
    void a_paired_plan_takes_the_20_pairs_of_a_published_example() {
        Power power = new Power(0.05, 0.85);
        RandomPart design = design(14.14214, 0, 20, 1);
        assertThat(power.particlesFor(10, k -> design(14.14214, 0, k, 1), 0, 1000)).hasValue(20);
        assertThat(power.of(10, design, 0)).isBetween(0.85, 0.851);
        assertThat(power.detectableShift(design, shift -> 0)).isBetween(9.95, 10.0);
    }

    /** TOSTER 0.3.4 manual, one sample: 121 values show a margin of 0.3 standard deviations with power 0.9. */
    @Test
    void equivalence_takes_the_121_of_a_published_example() {
        Power power = new Power(0.05, 0.9);
        assertThat(power.ofEquivalence(0.3, design(1, 0, 121, 1), 0)).isCloseTo(0.9, within(5e-3));
        assertThat(power.smallestMargin(design(1, 0, 121, 1), 0)).isCloseTo(0.3, within(2e-3));
    }

    /** 40 000 simulated studies, fixed seed: the noise is 0.25 points. */
    @ParameterizedTest
    @CsvSource({"0.223, 4, 0.0", "0.223, 6, 0.05", "0.405, 3, 0.1", "0.1, 3, 0.1"})
    void simulated_studies_show_equivalence_as_often_as_it_says(double margin, int particles, double shared) {
        RandomPart design = design(0.1, 0.1, particles, 3);
        Random random = new Random(7_7L + particles);
        double sd = design.standardError() * Math.sqrt(particles);
        int draws = 40_000;
        int shown = 0;
        for (int i = 0; i < draws; i++) {
            Moments means = new Moments();
            for (int j = 0; j < particles; j++) {
                means.add(sd * random.nextGaussian());
            }
            double estimate = shared * random.nextGaussian() + means.mean();
            RandomPart part = new RandomPart(Math.sqrt(means.variance() / particles), particles - 1);
            double p = Math.max(CombinedError.oneSidedP(estimate + margin, part, shared),
                CombinedError.oneSidedP(margin - estimate, part, shared));
            shown += p <= 0.05 ? 1 : 0;
        }
        assertThat((double) shown / draws)
            .isCloseTo(USUAL.ofEquivalence(margin, design, shared), within(0.01));
    }

    @Test
    void a_known_random_error_needs_no_mean_over_estimates() {
        double power = USUAL.of(0.3, RandomPart.known(0.1), 0);
        assertThat(power).isCloseTo(1 - NormalDistribution.cdf(1.959964 - 3), within(1e-6));
        assertThat(USUAL.of(0.3, RandomPart.known(0), 0)).isEqualTo(1);
        assertThat(USUAL.of(0, RandomPart.known(0), 0)).isZero();
        assertThat(USUAL.detectableShift(RandomPart.known(0), shift -> 0)).isZero();
        assertThat(USUAL.ofEquivalence(0.2, RandomPart.known(0), 0)).isEqualTo(1);
    }

    /** 40 000 simulated studies, fixed seed: the noise is 0.24 points. */
    @ParameterizedTest
    @CsvSource({"0.405, 3, 0.1", "0.405, 6, 0.1", "0.223, 4, 0.0", "0.693, 3, 0.177"})
    void simulated_studies_flag_as_often_as_it_says(double shift, int particles, double shared) {
        RandomPart design = design(0.15, 0.15, particles, 3);
        Random random = new Random(4_5L + particles);
        double sd = design.standardError() * Math.sqrt(particles);
        int draws = 40_000;
        int flagged = 0;
        for (int i = 0; i < draws; i++) {
            Moments means = new Moments();
            for (int j = 0; j < particles; j++) {
                means.add(sd * random.nextGaussian());
            }
            double estimate = shift + shared * random.nextGaussian() + means.mean();
            RandomPart part = new RandomPart(Math.sqrt(means.variance() / particles), particles - 1);
            flagged += CombinedError.twoSidedP(estimate, part, shared) <= 0.05 ? 1 : 0;
        }
        assertThat((double) flagged / draws).isCloseTo(USUAL.of(shift, design, shared), within(0.01));
    }

    @ParameterizedTest
    @CsvSource({"1.25, 0.05, 0, 3", "1.25, 0.15, 0, 7", "1.25, 0.30, 0, 21", "1.5, 0.05, 0, 3", "1.5, 0.15, 0, 4",
        "1.5, 0.30, 0, 8", "1.5, 0.05, 0.1, 3", "1.5, 0.15, 0.1, 5", "1.5, 0.30, 0.1, 13", "2, 0.05, 0.177, 3",
        "2, 0.15, 0.177, 3", "2, 0.30, 0.177, 6"})
    void the_number_found_suffices_and_one_less_does_not(double oddsRatio, double scatter, double shared,
                                                         int expected) {
        double shift = Math.log(oddsRatio);
        assertThat(USUAL.particlesFor(shift, k -> design(scatter, scatter, k, 3), shared, 1000)).hasValue(expected);
        assertThat(USUAL.of(shift, design(scatter, scatter, expected, 3), shared)).isGreaterThanOrEqualTo(0.8);
        if (expected > Power.FEWEST_PARTICLES) {
            assertThat(USUAL.of(shift, design(scatter, scatter, expected - 1, 3), shared)).isLessThan(0.8);
        }
    }

    @Test
    void a_shift_hidden_in_the_shared_error_is_shown_by_no_number_of_particles() {
        assertThat(USUAL.smallestShift(1)).isCloseTo(1.959964 + 0.841621, within(1e-6));
        assertThat(USUAL.smallestMargin(1)).isCloseTo(1.644854 + 1.281552, within(1e-6));
        double shift = Math.log(1.25);
        assertThat(USUAL.cannotBeReached(shift, 0.177)).isTrue();
        assertThat(USUAL.particlesFor(shift, k -> design(0.05, 0.05, k, 3), 0.177, 100_000)).isEmpty();
        assertThat(USUAL.of(shift, design(0.05, 0.05, 5000, 3), 0.177)).isLessThan(0.8);
        assertThat(USUAL.cannotBeReached(-0.5, 0.177)).isFalse();
    }

    @Test
    void a_number_beyond_the_most_is_not_offered() {
        IntFunction<RandomPart> noisy = k -> design(0.30, 0.30, k, 3);
        assertThat(USUAL.particlesFor(Math.log(1.25), noisy, 0, 20)).isEmpty();
        assertThat(USUAL.particlesFor(Math.log(1.25), noisy, 0, 21)).hasValue(21);
        assertThat(USUAL.particlesFor(Math.log(1.25), noisy, 0, 2)).isEmpty();
    }

    @Test
    void the_detectable_shift_is_the_one_shown_with_the_wanted_power() {
        for (double shared : new double[]{0, 0.05, 0.177}) {
            RandomPart design = design(0.15, 0.15, 5, 3);
            double shift = USUAL.detectableShift(design, size -> shared);
            assertThat(USUAL.of(shift, design, shared)).isCloseTo(0.8, within(1e-6));
            assertThat(shift).isGreaterThan(USUAL.smallestShift(shared));
        }
    }

    @Test
    void without_a_shift_the_power_is_the_chance_of_a_false_flag() {
        assertThat(USUAL.of(0, design(0.15, 0.15, 5, 3), 0)).isCloseTo(0.05, within(2e-4));
        assertThat(USUAL.of(-0.4, design(0.15, 0.15, 5, 3), 0.1))
            .isEqualTo(USUAL.of(0.4, design(0.15, 0.15, 5, 3), 0.1));
    }

    @Test
    void more_particles_never_show_less() {
        double before = 0;
        for (int particles = 3; particles < 400; particles += 1 + particles / 4) {
            double power = USUAL.of(0.3, design(0.15, 0.3, particles, 2), 0.08);
            assertThat(power).as("%s particles", particles).isGreaterThan(before);
            before = power;
        }
    }

    @Test
    void impossible_plans_are_refused() {
        assertThatThrownBy(() -> new Power(0.05, 0.04)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("0 < alpha < power < 1");
    }
}
