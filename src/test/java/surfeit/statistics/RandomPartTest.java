package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static surfeit.Vectors.tolerance;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.Vectors;

class RandomPartTest {

    @Test
    void the_spots_of_one_particle_give_its_mean_interval_and_p() {
        JsonNode vector = Vectors.read("46-one-particle");
        double[] spots = Vectors.doubles(vector.at("/input/spot_fractions"));
        double nominal = vector.at("/input/nominal_fraction").doubleValue();
        JsonNode expected = vector.path("expected");
        RandomPart random = RandomPart.ofMean(spots);
        double mean = Moments.of(spots).mean();
        assertThat(mean).isCloseTo(0.5325, within(1e-12));
        assertThat(random.standardError()).isCloseTo(expected.path("se").doubleValue(), tolerance(vector, 0.0137));
        assertThat(random.degreesOfFreedom()).isEqualTo(3);
        assertThat((mean - nominal) / random.standardError()).isCloseTo(2.3603873774083257, tolerance(vector, 2.36));
        double p = expected.path("p").doubleValue();
        assertThat(CombinedError.twoSidedP(mean - nominal, random, 0)).isCloseTo(p, tolerance(vector, p));
        double[] interval = Vectors.doubles(expected.path("ci95"));
        double half = CombinedError.halfWidth(random, 0, 0.95);
        assertThat(mean - half).isCloseTo(interval[0], tolerance(vector, interval[0]));
        assertThat(mean + half).isCloseTo(interval[1], tolerance(vector, interval[1]));
    }

    @Test
    void values_rounded_alike_keep_the_error_of_the_rounding() {
        JsonNode vector = Vectors.read("57-identical-values");
        double[] means = Vectors.doubles(vector.at("/input/particle_means_atomic_percent"));
        double step = vector.at("/input/rounding_step").doubleValue();
        RandomPart random = RandomPart.ofMean(means).atLeast(step / Math.sqrt(12));
        double floor = vector.at("/expected/se_floor_atomic_percent").doubleValue();
        double p = vector.at("/expected/p").doubleValue();
        assertThat(random.standardError()).isCloseTo(floor, tolerance(vector, floor));
        assertThat(CombinedError.twoSidedP(50.3 - 50.0, random, 0)).isCloseTo(p, tolerance(vector, p));
    }

    @Test
    void a_wild_particle_hides_a_shift_that_shows_without_it() {
        JsonNode vector = Vectors.read("56-leave-one-particle-out");
        double[] means = Vectors.doubles(vector.at("/input/particle_means"));
        double nominal = vector.at("/input/nominal_fraction").doubleValue();
        double all = vector.at("/expected/p_all").doubleValue();
        double[] without = Vectors.doubles(vector.at("/expected/p_leave_one_out"));
        assertThat(pOf(means, nominal)).isCloseTo(all, tolerance(vector, all));
        for (int i = 0; i < means.length; i++) {
            int left = i;
            double[] rest = IntStream.range(0, means.length).filter(j -> j != left).mapToDouble(j -> means[j]).toArray();
            assertThat(pOf(rest, nominal)).isCloseTo(without[i], tolerance(vector, without[i]));
        }
    }

    private static double pOf(double[] means, double nominal) {
        return CombinedError.twoSidedP(Moments.of(means).mean() - nominal, RandomPart.ofMean(means), 0);
    }

    @Test
    void the_particle_means_give_the_error_of_the_class_mean() {
        JsonNode vector = Vectors.read("77-incremental-remove-and-sums");
        double[] means = Vectors.doubles(vector.at("/input/particle_means"));
        double mean = vector.at("/expected/class_mean").doubleValue();
        double error = vector.at("/expected/class_s").doubleValue();
        assertThat(Moments.of(means).mean()).isCloseTo(mean, tolerance(vector, mean));
        assertThat(RandomPart.ofMean(means).standardError()).isCloseTo(error, tolerance(vector, error));
    }

    @Test
    void scaling_every_value_scales_the_error() {
        assertThat(new RandomPart(0.2, 3).times(-5)).isEqualTo(new RandomPart(1, 3));
        assertThat(new RandomPart(0.2, 3).atLeast(0.1)).isEqualTo(new RandomPart(0.2, 3));
    }

    @ParameterizedTest
    @CsvSource({"-0.1, 3", "NaN, 3", "Infinity, 3", "1, 0", "1, NaN"})
    void an_impossible_error_is_refused(double standardError, double df) {
        assertThatThrownBy(() -> new RandomPart(standardError, df)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("must be");
    }

    @Test
    void one_value_has_no_scatter() {
        assertThatThrownBy(() -> RandomPart.ofMean(1.0)).hasMessageContaining("at least 2 values, found 1");
    }
}
