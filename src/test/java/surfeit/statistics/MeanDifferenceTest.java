package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static surfeit.Vectors.tolerance;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import surfeit.Vectors;

class MeanDifferenceTest {

    @Test
    void two_sets_of_particles_agree_with_an_independent_library() {
        JsonNode vector = Vectors.read("35-welch");
        JsonNode expected = vector.path("expected");
        MeanDifference difference = MeanDifference.unpaired(Vectors.doubles(vector.at("/input/particle_means_A")),
            Vectors.doubles(vector.at("/input/particle_means_B")));
        double p = expected.path("p").doubleValue();
        double[] interval = Vectors.doubles(expected.path("ci95"));
        assertThat(difference.estimate())
            .isCloseTo(expected.path("difference").doubleValue(), tolerance(vector, 0.1));
        assertThat(difference.t()).isCloseTo(expected.path("t").doubleValue(), tolerance(vector, 3.7));
        assertThat(difference.random().degreesOfFreedom())
            .isCloseTo(expected.path("df").doubleValue(), tolerance(vector, 4));
        assertThat(difference.twoSidedP()).isCloseTo(p, tolerance(vector, p));
        assertThat(difference.estimate() - difference.halfWidth(0.95)).isCloseTo(interval[0], tolerance(vector, 0.02));
        assertThat(difference.estimate() + difference.halfWidth(0.95)).isCloseTo(interval[1], tolerance(vector, 0.18));
    }

    /** Student (1908), hours of sleep gained with two drugs, ten patients (from memory): t = 4.06, p = 0.0028. */
    @Test
    void paired_differences_reproduce_the_sleep_data() {
        double[] first = {0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};
        double[] second = {1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};
        MeanDifference paired = MeanDifference.paired(second, first);
        assertThat(paired.estimate()).isCloseTo(1.58, within(1e-12));
        assertThat(paired.t()).isCloseTo(4.0621, within(5e-5));
        assertThat(paired.twoSidedP()).isCloseTo(0.002833, within(5e-7));
        MeanDifference unpaired = MeanDifference.unpaired(second, first);
        assertThat(unpaired.t()).isCloseTo(1.8608, within(5e-5));
        assertThat(unpaired.random().degreesOfFreedom()).isCloseTo(17.776, within(5e-4));
        assertThat(unpaired.twoSidedP()).isCloseTo(0.07939, within(5e-6));
    }

    @Test
    void too_few_or_unequal_values_are_refused() {
        assertThatThrownBy(() -> MeanDifference.paired(new double[]{1, 2}, new double[]{1}))
            .hasMessageContaining("equal lengths, found 2 and 1");
        assertThatThrownBy(() -> MeanDifference.paired(new double[]{1}, new double[]{1}))
            .hasMessageContaining("at least 2 values a side, found 1");
        assertThatThrownBy(() -> MeanDifference.unpaired(new double[]{1, 2}, new double[]{1}))
            .hasMessageContaining("at least 2 values a side, found 1");
        assertThatThrownBy(() -> new MeanDifference(Double.NaN, RandomPart.known(1)))
            .isInstanceOf(IllegalArgumentException.class);
    }
}
