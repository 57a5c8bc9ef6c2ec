package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;

/** The adjustment of Benjamini and Hochberg as a function of p. */
class StepUpAdjustmentTest {

    /** By hand: five values evenly spaced up to 0.05 are all worth 0.05, since 0.01 x 5/1 = 0.02 x 5/2 = ... */
    @Example
    void evenly_spaced_values_are_all_worth_the_largest() {
        StepUpAdjustment adjustment = StepUpAdjustment.of(new double[] {0.03, 0.01, 0.05, 0.02, 0.04});
        for (double p : new double[] {0.01, 0.02, 0.03, 0.04, 0.05}) {
            assertThat(adjustment.of(p)).isCloseTo(0.05, within(1e-15));
        }
    }

    /** Few different values, so that ties come. */
    @Property
    void it_gives_each_value_what_the_adjustment_in_order_gives_it(
            @ForAll @Size(min = 1, max = 80) List<@DoubleRange(min = 0, max = 1) Double> values,
            @ForAll boolean rounded) {
        double[] family = values.stream().mapToDouble(p -> rounded ? Math.rint(p * 20) / 20 : p).toArray();
        requireSame(family);
    }

    @Example
    void a_long_family_is_adjusted_alike_whether_much_is_found_in_it_or_nothing() {
        Random random = new Random(1);
        requireSame(random.doubles(100_000).toArray());
        requireSame(random.doubles(100_000).map(p -> Math.pow(p, 8)).toArray());
        assertThat(StepUpAdjustment.of(random.doubles(100_000).toArray()).size()).isLessThan(1000);
    }

    private static void requireSame(double[] family) {
        double[] expected = ManyTests.benjaminiHochberg(family);
        StepUpAdjustment adjustment = StepUpAdjustment.of(family.clone());
        assertThat(Arrays.stream(family).map(adjustment::of).toArray()).containsExactly(expected);
    }

    @Example
    void an_empty_family_adjusts_nothing_and_what_is_no_p_value_is_refused() {
        assertThat(StepUpAdjustment.of(new double[0]).of(0.5)).isEqualTo(1);
        for (double wrong : new double[] {-0.01, 1.01, Double.NaN}) {
            assertThatThrownBy(() -> StepUpAdjustment.of(new double[] {wrong}))
                .isInstanceOf(IllegalArgumentException.class);
        }
    }
}
