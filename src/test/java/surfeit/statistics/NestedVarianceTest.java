package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static surfeit.Vectors.tolerance;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.Vectors;

class NestedVarianceTest {

    /** The REML figures of these cases are not compared: see {@link NestedVariance}. */
    @ParameterizedTest
    @ValueSource(strings = {"37-nested-balanced", "38-nested-unbalanced", "39-nested-negative-component"})
    void spots_in_particles_agree_with_an_independent_library(String name) {
        JsonNode vector = Vectors.read(name);
        NestedVariance nested = NestedVariance.of(StreamSupport
            .stream(vector.at("/input/values").spliterator(), false).map(Vectors::doubles).toArray(double[][]::new));
        assertClose(vector, "MSB", nested.meanSquareBetween());
        assertClose(vector, "MSW", nested.meanSquareWithin());
        assertClose(vector, "n0", nested.typicalGroupSize());
        assertClose(vector, "var_between_anova", nested.varianceBetween());
        assertClose(vector, "icc_anova", nested.intraclassCorrelation());
        assertClose(vector, "mean_of_particle_means", nested.mean());
        RandomPart random = nested.ofGroupsLikeThese();
        assertClose(vector, "se_particle_means", random.standardError());
        double[] interval = Vectors.doubles(vector.at("/expected/ci95_particle_means"));
        double half = CombinedError.halfWidth(random, 0, 0.95);
        assertThat(nested.mean() - half).isCloseTo(interval[0], tolerance(vector, interval[0]));
        assertThat(nested.mean() + half).isCloseTo(interval[1], tolerance(vector, interval[1]));
    }

    private static void assertClose(JsonNode vector, String key, double actual) {
        double expected = vector.path("expected").path(key).doubleValue();
        assertThat(actual).as(key).isCloseTo(expected, tolerance(vector, expected));
    }

    @Test
    void the_mean_of_these_very_particles_carries_only_the_scatter_within() {
        JsonNode vector = Vectors.read("47-these-particles-scope");
        NestedVariance nested = NestedVariance.of(Vectors.rows(vector.at("/input/particles")));
        RandomPart random = nested.ofTheseGroups();
        double[] interval = Vectors.doubles(vector.at("/expected/ci95"));
        assertClose(vector, "mean", nested.mean());
        assertClose(vector, "se", random.standardError());
        assertClose(vector, "df", random.degreesOfFreedom());
        double half = CombinedError.halfWidth(random, 0, 0.95);
        assertThat(nested.mean() - half).isCloseTo(interval[0], tolerance(vector, interval[0]));
        assertThat(nested.mean() + half).isCloseTo(interval[1], tolerance(vector, interval[1]));
    }

    /** NIST StRD, analysis of variance, SiRstv: five instruments, five readings (data and values from memory). */
    @Test
    void the_certified_silicon_resistivity_table_comes_out() {
        NestedVariance nested = NestedVariance.of(new double[][]{
            {196.3052, 196.1240, 196.1890, 196.2569, 196.3403},
            {196.3042, 196.3825, 196.1669, 196.3257, 196.0422},
            {196.1303, 196.2005, 196.2889, 196.0343, 196.1811},
            {196.2795, 196.1748, 196.1494, 196.1485, 195.9885},
            {196.2119, 196.1051, 196.1850, 196.0052, 196.2090}});
        assertThat(nested.sumOfSquaresBetween()).isCloseTo(5.11462616e-2, within(1e-11));
        assertThat(nested.sumOfSquaresWithin()).isCloseTo(2.1663656e-1, within(1e-11));
        assertThat(nested.degreesOfFreedomBetween()).isEqualTo(4);
        assertThat(nested.degreesOfFreedomWithin()).isEqualTo(20);
        assertThat(nested.f()).isCloseTo(1.18046237440255, within(1e-10));
        assertThat(nested.varianceBetween()).isCloseTo(3.909475e-4, within(1e-10));
        assertThat(nested.pValue()).isCloseTo(FDistribution.survival(1.18046237440255, 4, 20), within(1e-10));
    }

    @Test
    void kept_up_moments_give_the_same_as_the_values() {
        NestedVariance values = NestedVariance.of(new double[]{1, 2, 4}, new double[]{5}, new double[]{3, 3.5});
        NestedVariance moments = NestedVariance.of(List.of(Moments.of(1, 2, 4), Moments.of(5), Moments.of(3, 3.5)));
        assertThat(moments.f()).isEqualTo(values.f());
        assertThat(moments.valueCount()).isEqualTo(6);
        assertThat(moments.groupCount()).isEqualTo(3);
    }

    @Test
    void one_particle_has_scatter_within_but_none_between() {
        NestedVariance one = NestedVariance.of(new double[]{0.52, 0.55, 0.5, 0.56});
        assertThat(one.ofTheseGroups().standardError()).isCloseTo(0.013768926368215268, within(1e-15));
        assertThatThrownBy(one::varianceBetween).isInstanceOf(IllegalStateException.class)
            .hasMessageContaining("at least 2 groups, found 1");
        assertThatThrownBy(one::ofGroupsLikeThese).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void one_spot_a_particle_has_scatter_between_but_none_within() {
        NestedVariance single = NestedVariance.of(new double[]{1}, new double[]{2}, new double[]{4});
        assertThat(single.ofGroupsLikeThese()).isEqualTo(RandomPart.ofMean(1, 2, 4));
        assertThatThrownBy(single::meanSquareWithin).isInstanceOf(IllegalStateException.class)
            .hasMessageContaining("needs a group with 2 values");
    }

    @Test
    void where_nothing_varies_nothing_lies_between() {
        NestedVariance equal = NestedVariance.of(new double[]{7, 7}, new double[]{7, 7});
        assertThat(equal.intraclassCorrelation()).isZero();
    }

    @Test
    void an_empty_particle_is_refused() {
        assertThatThrownBy(() -> NestedVariance.of(new double[]{1}, new double[0]))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("found sizes [1, 0]");
        assertThatThrownBy(() -> NestedVariance.of(List.of())).isInstanceOf(IllegalArgumentException.class);
    }
}
