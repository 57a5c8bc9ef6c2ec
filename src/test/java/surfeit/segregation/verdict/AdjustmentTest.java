package surfeit.segregation.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import surfeit.segregation.nominal.BelowLimit;
import surfeit.segregation.nominal.NominalTest;
import surfeit.statistics.RandomPart;

/** Which tests enter the family of an answer; invented p values, Holm's adjustment by hand. */
class AdjustmentTest {
    private static NominalTest with(double p) {
        return test(p, "logit", List.of(new RandomPart(0.01, 2)));
    }

    private static NominalTest withoutScatter(double p) {
        return test(p, "logit", List.of());
    }

    private static NominalTest belowLimit(double p) {
        return test(p, BelowLimit.SCALE, List.of(RandomPart.known(0)));
    }

    private static NominalTest test(double p, String scale, List<RandomPart> parts) {
        return new NominalTest(0.5, 0.1, 0.05, 0.05, scale, p, 0.4, 0.4, 0.4, 0.6, 1.3, 1, parts);
    }

    private static double[][] holm(NominalTest[]... groups) {
        return Adjustment.holm(List.of(groups));
    }

    /** Three tests: 0.01 x 3, then 0.02 x 2 and 0.03 x 1, of which the later is not below the earlier. */
    @Test
    void a_group_of_two_elements_is_one_test_with_the_larger_p() {
        double[][] adjusted = holm(new NominalTest[] {with(0.005), with(0.01)},
            new NominalTest[] {with(0.03), with(0.02)}, new NominalTest[] {with(0.02), with(0.001)});
        assertThat(adjusted[0]).containsExactly(new double[] {0.03, 0.03}, within(1e-12));
        assertThat(adjusted[1]).containsExactly(new double[] {0.04, 0.04}, within(1e-12));
        assertThat(adjusted[2]).containsExactly(new double[] {0.04, 0.04}, within(1e-12));
    }

    @Test
    void of_three_elements_those_without_a_scatter_or_a_p_value_do_not_enter() {
        double[][] adjusted = holm(new NominalTest[] {with(0.01), withoutScatter(0.001), with(0.02)},
            new NominalTest[] {with(Double.NaN), belowLimit(0.5), belowLimit(0.04)});
        assertThat(adjusted[0]).containsExactly(new double[] {0.04, Double.NaN, 0.06}, within(1e-12));
        assertThat(adjusted[1]).containsExactly(new double[] {Double.NaN, 0.5, 0.08}, within(1e-12));
    }

    @Test
    void two_elements_of_which_one_has_no_scatter_are_no_test() {
        assertThat(holm(new NominalTest[] {with(0.01), withoutScatter(0.01)})[0]).containsOnly(Double.NaN);
        assertThat(holm(new NominalTest[] {withoutScatter(0.01), with(0.01)})[0]).containsOnly(Double.NaN);
        assertThat(holm(new NominalTest[] {withoutScatter(0.01), withoutScatter(0.01)})[0]).containsOnly(Double.NaN);
        assertThat(holm(new NominalTest[] {with(0.01), with(Double.NaN)})[0]).containsOnly(Double.NaN);
    }

    @Test
    void beside_an_element_below_its_limit_everywhere_the_other_needs_no_scatter_but_a_p_value() {
        assertThat(holm(new NominalTest[] {belowLimit(0.01), withoutScatter(0.02)})[0]).containsExactly(0.02, 0.02);
        assertThat(holm(new NominalTest[] {withoutScatter(0.02), belowLimit(0.01)})[0]).containsExactly(0.02, 0.02);
        assertThat(holm(new NominalTest[] {belowLimit(0.01), withoutScatter(Double.NaN)})[0]).containsOnly(Double.NaN);
        assertThat(holm(new NominalTest[] {withoutScatter(Double.NaN), belowLimit(0.01)})[0]).containsOnly(Double.NaN);
    }
}
