package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import surfeit.Vectors;

/** The adjustment of Benjamini and Hochberg as a function of p. */
public class StepUpAdjustmentTest {

    /** By hand: five values evenly spaced up to 0.05 are all worth 0.05, since 0.01 x 5/1 = 0.02 x 5/2 = ... */
    @Example
    void evenly_spaced_values_are_all_worth_the_largest() {
        StepUpAdjustment adjustment = adjustment(PValueFamily.MOST_HELD, 0.03, 0.01, 0.05, 0.02, 0.04);
        for (double p : new double[] {0.01, 0.02, 0.03, 0.04, 0.05}) {
            assertThat(adjustment.of(p)).isCloseTo(0.05, within(1e-15));
        }
    }

    @Example
    void it_agrees_with_an_independent_library() {
        JsonNode vector = Vectors.read("41-bh");
        double[] values = Vectors.doubles(vector.at("/input/p"));
        double[] expected = Vectors.doubles(vector.at("/expected/adjusted"));
        StepUpAdjustment adjustment = adjustment(PValueFamily.MOST_HELD, values);
        assertThat(values).hasSameSizeAs(expected);
        for (int i = 0; i < values.length; i++) {
            assertThat(adjustment.of(values[i])).as("test %s", i)
                .isCloseTo(expected[i], Vectors.tolerance(vector, expected[i]));
        }
    }

    @Example
    void in_the_published_example_it_flags_four() {
        StepUpAdjustment adjustment = adjustment(PValueFamily.MOST_HELD, ManyTestsTest.PUBLISHED);
        assertThat(Arrays.stream(ManyTestsTest.PUBLISHED).filter(p -> adjustment.of(p) <= 0.05).count()).isEqualTo(4);
    }

    /** Few different values, so that ties come. */
    @Property
    void it_gives_each_value_what_the_adjustment_in_order_gives_it(
            @ForAll @Size(min = 1, max = 80) List<@DoubleRange(min = 0, max = 1) Double> values,
            @ForAll boolean rounded) {
        requireSame(family(values, rounded), PValueFamily.MOST_HELD);
    }

    /** Pieces of so few values that a family takes many, of one length or not, with ties within and across them. */
    @Property
    void a_family_too_long_for_memory_is_adjusted_to_the_last_bit_as_one_that_is_not(
            @ForAll @Size(min = 1, max = 80) List<@DoubleRange(min = 0, max = 1) Double> values,
            @ForAll boolean rounded, @ForAll @IntRange(min = 1, max = 9) int mostHeld) {
        requireSame(family(values, rounded), mostHeld);
    }

    @Example
    void zeros_of_either_sign_and_ones_are_adjusted_as_in_order_however_few_are_held() {
        for (int mostHeld = 1; mostHeld <= 7; mostHeld++) {
            requireSame(new double[] {1, 0, 1, 0.5, 0, 1, 0.5}, mostHeld);
            double[] zeros = {0.0, -0.0, 1, 0.0, -0.0};
            StepUpAdjustment adjustment = adjustment(mostHeld, zeros);
            assertThat(Arrays.stream(zeros).map(adjustment::of).toArray()).containsExactly(0, 0, 1, 0, 0);
        }
    }

    private static double[] family(List<Double> values, boolean rounded) {
        return values.stream().mapToDouble(p -> rounded ? Math.rint(p * 20) / 20 : p).toArray();
    }

    private static StepUpAdjustment adjustment(int mostHeld, double... values) {
        try (PValueFamily family = new PValueFamily(mostHeld, NumbersAside::inMemory)) {
            Arrays.stream(values).forEach(family::add);
            return StepUpAdjustment.of(family);
        }
    }

    @Example
    void a_long_family_is_adjusted_alike_whether_much_is_found_in_it_or_nothing() {
        Random random = new Random(1);
        for (int mostHeld : new int[] {PValueFamily.MOST_HELD, 999}) {
            requireSame(random.doubles(100_000).toArray(), mostHeld);
            requireSame(random.doubles(100_000).map(p -> Math.pow(p, 8)).toArray(), mostHeld);
            assertThat(adjustment(mostHeld, random.doubles(100_000).toArray()).size()).isLessThan(1000);
        }
    }

    @Example
    void a_family_that_memory_holds_is_not_put_aside() {
        Random random = new Random(2);
        try (PValueFamily family = new PValueFamily(() -> {
            throw new IllegalStateException("asked for room");
        })) {
            random.doubles(PValueFamily.MOST_HELD).map(p -> Math.pow(p, 8)).forEach(family::add);
            assertThat(StepUpAdjustment.of(family).size()).isGreaterThan(PValueFamily.MOST_HELD / 2);
            assertThatThrownBy(() -> family.add(0.5)).hasMessage("asked for room");
        }
    }

    private static void requireSame(double[] family, int mostHeld) {
        double[] expected = inOrder(family);
        StepUpAdjustment adjustment = adjustment(mostHeld, family);
        assertThat(Arrays.stream(family).map(adjustment::of).toArray()).containsExactly(expected);
    }

    /** The adjustment as its authors state it, by going through the ranks: min over i ≥ j of m p(i)/i, at most 1. */
    public static double[] inOrder(double... pValues) {
        int[] order = IntStream.range(0, pValues.length).boxed().sorted(Comparator.comparingDouble(i -> pValues[i]))
            .mapToInt(Integer::intValue).toArray();
        double[] adjusted = new double[pValues.length];
        double smallest = 1;
        for (int rank = order.length; rank >= 1; rank--) {
            smallest = Math.min(smallest, pValues[order[rank - 1]] * order.length / rank);
            adjusted[order[rank - 1]] = smallest;
        }
        return adjusted;
    }

    @Example
    void an_empty_family_adjusts_nothing_and_what_is_no_p_value_is_refused() {
        assertThat(adjustment(1).of(0.5)).isEqualTo(1);
        for (double wrong : new double[] {-0.01, 1.01, Double.NaN}) {
            assertThatThrownBy(() -> adjustment(1, wrong))
                .isInstanceOf(IllegalArgumentException.class);
        }
    }
}
