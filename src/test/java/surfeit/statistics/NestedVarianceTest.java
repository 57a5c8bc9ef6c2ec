package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static surfeit.Vectors.tolerance;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.List;
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
        NestedVariance nested = nested(Vectors.rows(vector.at("/input/values")));
        assertClose(vector, "MSB", nested.meanSquareBetween());
        assertClose(vector, "MSW", nested.meanSquareWithin());
        assertClose(vector, "var_between_anova", nested.varianceBetween());
    }

    private static NestedVariance nested(double[]... particles) {
        return NestedVariance.of(Arrays.stream(particles).map(Moments::of).toList());
    }

    private static void assertClose(JsonNode vector, String key, double actual) {
        double expected = vector.path("expected").path(key).doubleValue();
        assertThat(actual).as(key).isCloseTo(expected, tolerance(vector, expected));
    }

    /**
     * Montgomery, Design and Analysis of Experiments, purity of batches from three suppliers (coded data). The book prints
     * 69.92 on 9, 63.33 on 24 and a component of batches of 1.71; worked out from its data to more digits.
     */
    @Test
    void the_published_batches_within_suppliers_come_out() {
        double[][][] purity = {
            {{1, -1, 0}, {-2, -3, -4}, {-2, 0, 1}, {1, 4, 0}},
            {{1, -2, -3}, {0, 4, 2}, {-1, 0, -2}, {0, 3, 2}},
            {{2, 4, 0}, {-2, 0, 2}, {1, -1, 2}, {3, 2, 1}}};
        double between = 0;
        double within = 0;
        for (double[][] supplier : purity) {
            NestedVariance nested = nested(supplier);
            between += nested.meanSquareBetween() * nested.degreesOfFreedomBetween();
            within += nested.meanSquareWithin() * nested.degreesOfFreedomWithin();
        }
        assertThat(between).isCloseTo(69.9167, within(5e-5));
        assertThat(within).isCloseTo(63.3333, within(5e-5));
        assertThat((between / 9 - within / 24) / 3).isCloseTo(1.709877, within(5e-7));
    }

    /** NIST StRD, analysis of variance, SiRstv: five instruments, five readings (data and values from memory). */
    @Test
    void the_certified_silicon_resistivity_table_comes_out() {
        NestedVariance nested = nested(new double[][]{
            {196.3052, 196.1240, 196.1890, 196.2569, 196.3403},
            {196.3042, 196.3825, 196.1669, 196.3257, 196.0422},
            {196.1303, 196.2005, 196.2889, 196.0343, 196.1811},
            {196.2795, 196.1748, 196.1494, 196.1485, 195.9885},
            {196.2119, 196.1051, 196.1850, 196.0052, 196.2090}});
        assertThat(nested.degreesOfFreedomBetween()).isEqualTo(4);
        assertThat(nested.degreesOfFreedomWithin()).isEqualTo(20);
        assertThat(nested.meanSquareBetween()).isCloseTo(5.11462616e-2 / 4, within(1e-11));
        assertThat(nested.meanSquareWithin()).isCloseTo(2.1663656e-1 / 20, within(1e-11));
        assertThat(nested.meanSquareBetween() / nested.meanSquareWithin())
            .isCloseTo(1.18046237440255, within(1e-10));
        assertThat(nested.varianceBetween()).isCloseTo(3.909475e-4, within(1e-10));
    }

    /**
     * Two stages of random effects by hand, groups 1 2 4, 5 and 3 3.5: grand mean 18.5/6, between
     * 3 (3/4)² + (23/12)² + 2 (1/6)² = 5.416667 on 2, within 14/3 + 1/8 on 3, n0 = (6 - 14/6)/2.
     */
    @Test
    void groups_of_different_size_count_by_their_size() {
        NestedVariance nested = nested(new double[]{1, 2, 4}, new double[]{5}, new double[]{3, 3.5});
        assertThat(nested.groupCount()).isEqualTo(3);
        assertThat(nested.meanSquareBetween()).isCloseTo(5.416666667 / 2, within(1e-9));
        assertThat(nested.meanSquareWithin()).isCloseTo((14 / 3.0 + 0.125) / 3, within(1e-12));
        assertThat(nested.varianceBetween()).isCloseTo((5.416666667 / 2 - 4.791666667 / 3) / (11 / 6.0), within(1e-9));
    }

    @Test
    void one_particle_has_scatter_within_but_none_between() {
        NestedVariance one = nested(new double[]{0.52, 0.55, 0.5, 0.56});
        assertThat(one.meanSquareWithin()).isCloseTo(0.00227500 / 3, within(1e-12));
        assertThatThrownBy(one::varianceBetween).isInstanceOf(IllegalStateException.class)
            .hasMessageContaining("at least 2 groups, found 1");
    }

    @Test
    void one_spot_a_particle_has_scatter_between_but_none_within() {
        NestedVariance single = nested(new double[]{1}, new double[]{2}, new double[]{4});
        assertThat(single.meanSquareBetween()).isCloseTo(7.0 / 3, within(1e-12));
        assertThatThrownBy(single::meanSquareWithin).isInstanceOf(IllegalStateException.class)
            .hasMessageContaining("needs a group with 2 values");
    }

    @Test
    void where_nothing_varies_nothing_lies_between() {
        NestedVariance equal = nested(new double[]{7, 7}, new double[]{7, 7});
        assertThat(equal.varianceBetween()).isZero();
    }

    @Test
    void an_empty_particle_is_refused() {
        assertThatThrownBy(() -> nested(new double[]{1}, new double[0]))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("found sizes [1, 0]");
        assertThatThrownBy(() -> NestedVariance.of(List.of())).isInstanceOf(IllegalArgumentException.class);
    }
}
