package surfeit.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class TwoLevelNestingTest {

    /** Montgomery, Design and Analysis of Experiments, purity of batches from three suppliers (coded data). */
    private static final double[][][] PURITY = {
        {{1, -1, 0}, {-2, -3, -4}, {-2, 0, 1}, {1, 4, 0}},
        {{1, -2, -3}, {0, 4, 2}, {-1, 0, -2}, {0, 3, 2}},
        {{2, 4, 0}, {-2, 0, 2}, {1, -1, 2}, {3, 2, 1}}};

    /** The book prints 15.06, 69.92, 63.33, F 0.97 and 2.94, p 0.42 and 0.02, components 1.71 and 2.64. */
    @Test
    void the_purity_example_comes_out() {
        TwoLevelNesting nesting = TwoLevelNesting.of(PURITY);
        assertThat(nesting.sumOfSquaresLots()).isCloseTo(15.0556, within(5e-5));
        assertThat(nesting.sumOfSquaresParticles()).isCloseTo(69.9167, within(5e-5));
        assertThat(nesting.sumOfSquaresSpots()).isCloseTo(63.3333, within(5e-5));
        assertThat(nesting.degreesOfFreedomLots()).isEqualTo(2);
        assertThat(nesting.degreesOfFreedomParticles()).isEqualTo(9);
        assertThat(nesting.degreesOfFreedomSpots()).isEqualTo(24);
        assertThat(nesting.fOfLots()).isCloseTo(0.969011, within(5e-7));
        assertThat(nesting.pOfLots()).isCloseTo(0.4158, within(5e-5));
        assertThat(nesting.fOfParticles()).isCloseTo(2.943860, within(5e-7));
        assertThat(nesting.pOfParticles()).isCloseTo(0.01667, within(5e-6));
        assertThat(nesting.varianceOfSpots()).isCloseTo(2.638889, within(5e-7));
        assertThat(nesting.varianceOfParticles()).isCloseTo(1.709877, within(5e-7));
        assertThat(nesting.varianceOfLots()).as("estimate is -0.020").isZero();
    }

    @Test
    void unequal_numbers_are_refused() {
        assertThatThrownBy(() -> TwoLevelNesting.of(new double[][][]{{{1, 2}, {3, 4}}, {{1, 2}, {3}}}))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("Lot 2 differs");
        assertThatThrownBy(() -> TwoLevelNesting.of(new double[][][]{{{1, 2}, {3, 4}}, {{1, 2}}}))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("expected 2 of 2");
        assertThatThrownBy(() -> TwoLevelNesting.of(new double[][][]{{{1, 2}, {3, 4}}}))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("found 1 lots");
        assertThatThrownBy(() -> new TwoLevelNesting(2, 2, 2, -1, 0, 0)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("Sums of squares must be 0 or above");
    }
}
