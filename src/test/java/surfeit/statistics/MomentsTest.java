package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static surfeit.Vectors.tolerance;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import surfeit.Vectors;

class MomentsTest {

    /** NIST StRD, univariate, NumAcc1; certified mean 10000002, standard deviation 1 (from memory). */
    @Test
    void numacc1_comes_out_exactly() {
        Moments moments = Moments.of(10000001, 10000003, 10000002);
        assertThat(moments.mean()).isEqualTo(10000002);
        assertThat(Math.sqrt(moments.variance())).isEqualTo(1);
    }

    /**
     * NIST StRD, univariate, NumAcc4; certified mean 10000000.2, standard deviation 0.1 (from memory). The values
     * themselves are rounded to 1.9e-9 as doubles, which limits the standard deviation to about 8 digits.
     */
    @Test
    void numacc4_comes_out_as_well_as_its_doubles_allow() {
        double[] values = IntStream.range(0, 1001)
            .mapToDouble(i -> i == 0 ? 10000000.2 : i % 2 == 1 ? 10000000.1 : 10000000.3).toArray();
        Moments moments = Moments.of(values);
        assertThat(moments.mean()).isCloseTo(10000000.2, within(2e-9));
        assertThat(Math.sqrt(moments.variance())).isCloseTo(0.1, within(2e-9));
        Moments oneByOne = new Moments();
        Arrays.stream(values).forEach(oneByOne::add);
        assertThat(Math.sqrt(oneByOne.variance())).isCloseTo(0.1, within(2e-9));
    }

    @Test
    void one_by_one_they_agree_with_two_passes_of_another_library() {
        JsonNode vector = Vectors.read("51-incremental-moments");
        double[] values = Vectors.doubles(vector.at("/input/values"));
        Moments moments = new Moments();
        Arrays.stream(values, 0, values.length / 2).forEach(moments::add);
        JsonNode expected = vector.path("expected");
        assertThat(moments.mean()).isCloseTo(expected.path("first_half_mean").doubleValue(), tolerance(vector, 1e6));
        Arrays.stream(values, values.length / 2, values.length).forEach(moments::add);
        double variance = expected.path("variance").doubleValue();
        assertThat(moments.count()).isEqualTo(values.length);
        assertThat(moments.mean()).isCloseTo(expected.path("mean").doubleValue(), tolerance(vector, 1e6));
        assertThat(moments.variance()).isCloseTo(variance, tolerance(vector, variance));
        assertThat(Moments.of(values).variance()).isCloseTo(variance, tolerance(vector, variance));
    }

    @Test
    void no_value_has_no_mean() {
        assertThatThrownBy(() -> new Moments().mean()).isInstanceOf(IllegalStateException.class)
            .hasMessageContaining("found 0");
    }

    @Test
    void identical_values_have_no_scatter_not_even_rounding() {
        assertThat(Moments.of(50.3, 50.3, 50.3).variance()).isZero();
    }

    @Test
    void values_already_summed_up_have_the_same_moments() {
        Moments kept = Moments.of(4, 7, 1, 8);
        Moments summed = Moments.ofSums(4, kept.mean(), kept.sumOfSquaredDeviations());
        assertThat(summed.variance()).isEqualTo(kept.variance());
        summed.add(3);
        assertThat(summed.mean()).isCloseTo(23.0 / 5, within(1e-12));
        assertThat(Moments.ofSums(1, 2, 1e-20).sumOfSquaredDeviations()).as("one value has no scatter").isZero();
        assertThatThrownBy(() -> Moments.ofSums(0, 2, 0)).hasMessageContaining("got 0, 2.0 and 0.0");
        assertThatThrownBy(() -> Moments.ofSums(3, Double.NaN, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Moments.ofSums(3, 1, Double.POSITIVE_INFINITY))
            .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Moments.ofSums(3, 1, -1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void one_value_has_no_variance_and_an_infinite_one_is_refused() {
        assertThatThrownBy(() -> Moments.of(3).variance()).isInstanceOf(IllegalStateException.class)
            .hasMessageContaining("at least 2 values, found 1");
        assertThatThrownBy(() -> Moments.of(1, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Moments().add(Double.POSITIVE_INFINITY))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("Infinity");
    }
}
