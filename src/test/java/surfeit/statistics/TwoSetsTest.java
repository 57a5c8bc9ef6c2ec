package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static surfeit.Vectors.tolerance;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import surfeit.Vectors;

/** Published comparisons of two sets of particles, made of the parts an answer is made of. */
class TwoSetsTest {

    @Test
    void two_sets_of_particles_agree_with_an_independent_library() {
        JsonNode vector = Vectors.read("35-welch");
        JsonNode expected = vector.path("expected");
        Difference difference = unpaired(Vectors.doubles(vector.at("/input/particle_means_A")),
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
        Difference paired = paired(second, first);
        assertThat(paired.estimate()).isCloseTo(1.58, within(1e-12));
        assertThat(paired.t()).isCloseTo(4.0621, within(5e-5));
        assertThat(paired.twoSidedP()).isCloseTo(0.002833, within(5e-7));
        Difference unpaired = unpaired(second, first);
        assertThat(unpaired.t()).isCloseTo(1.8608, within(5e-5));
        assertThat(unpaired.random().degreesOfFreedom()).isCloseTo(17.776, within(5e-4));
        assertThat(unpaired.twoSidedP()).isCloseTo(0.07939, within(5e-6));
    }

    /**
     * NAG Library Manual, Mark 30.3, example of g07ca: 4 values of mean 25 and standard deviation 0.8185, 8 of 21 and
     * 4.2083, variances not taken as equal: t 2.5922, 7.9925 degrees of freedom, p 0.0320, difference 0.4410 to 7.5590.
     */
    @Test
    void two_sets_of_unequal_scatter_reproduce_a_published_example() {
        Difference difference = new Difference(25 - 21,
            new RandomPart(0.8185 / 2, 3).plus(new RandomPart(4.2083 / Math.sqrt(8), 7)));
        assertThat(difference.t()).isCloseTo(2.5922, within(5e-5));
        assertThat(difference.random().degreesOfFreedom()).isCloseTo(7.9925, within(1e-4));
        assertThat(difference.twoSidedP()).isCloseTo(0.0320, within(5e-5));
        assertThat(difference.estimate() - difference.halfWidth(0.95)).isCloseTo(0.4410, within(1e-4));
        assertThat(difference.estimate() + difference.halfWidth(0.95)).isCloseTo(7.5590, within(1e-4));
    }

    /**
     * D. Harvey, Modern Analytical Chemistry (2000), example 4.21: two methods for monensin on 11 samples, differences
     * of mean 2.25 and standard deviation 5.63; from these t 1.33, below 2.23 at 10 degrees of freedom.
     */
    @Test
    void paired_differences_reproduce_a_published_comparison_of_methods() {
        double[] differences = {2.8, 1.4, -3.0, 6.0, -6.6, -0.5, 9.7, 12.7, -1.6, 4.0, -0.2};
        Difference paired = paired(differences, new double[differences.length]);
        assertThat(paired.estimate()).isCloseTo(2.25, within(5e-3));
        assertThat(paired.random().standardError() * Math.sqrt(11)).isCloseTo(5.63, within(5e-3));
        assertThat(paired.t()).isCloseTo(1.33, within(1e-2));
        assertThat(paired.halfWidth(0.95) / paired.random().standardError()).isCloseTo(2.23, within(5e-3));
        assertThat(paired.twoSidedP()).isGreaterThan(0.05);
    }

    private static Difference unpaired(double[] a, double[] b) {
        return new Difference(Moments.of(a).mean() - Moments.of(b).mean(), RandomPart.ofMean(a).plus(RandomPart.ofMean(b)));
    }

    private static Difference paired(double[] a, double[] b) {
        double[] differences = IntStream.range(0, a.length).mapToDouble(i -> a[i] - b[i]).toArray();
        return new Difference(Moments.of(differences).mean(), RandomPart.ofMean(differences));
    }

    private record Difference(double estimate, RandomPart random) {
        double t() {
            return estimate / random.standardError();
        }

        double twoSidedP() {
            return CombinedError.twoSidedP(estimate, random, 0);
        }

        double halfWidth(double confidence) {
            return CombinedError.halfWidth(random, 0, confidence);
        }
    }
}
