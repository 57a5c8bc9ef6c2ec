package surfeit.segregation.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import surfeit.segregation.sums.Sums;

/** A group closed again without one element, against spots that never had it; invented spots. */
class GroupSumsTest {
    private static final double[] STEPS = {0.001, 0.002, 0.004};

    /** Scatter of a thousandth: what the first order leaves out is a thousandth of the result. */
    @Test
    void without_an_element_means_scatter_and_steps_are_those_of_spots_that_never_had_it() {
        Random random = new Random(11);
        List<double[][]> particles = List.of(spots(random, 3), spots(random, 2), spots(random, 4));
        for (int gone = 0; gone < 3; gone++) {
            int dropped = gone;
            GroupSums reduced = Sums.of(particles, STEPS).withoutElement(gone);
            GroupSums direct = Sums.of(particles.stream().map(spots -> Arrays.stream(spots)
                .map(spot -> GroupSums.drop(spot, dropped)).toArray(double[][]::new)).toList());
            for (int i = 0; i < 2; i++) {
                double square = direct.withinMeanSquare(i).orElseThrow();
                assertThat(reduced.mean()[i]).isCloseTo(direct.mean()[i], within(1e-6));
                assertThat(reduced.withinMeanSquare(i).orElseThrow()).isCloseTo(square, within(0.01 * square));
                double between = direct.betweenDeviation(i, direct.mean()[i]);
                assertThat(reduced.betweenDeviation(i, reduced.mean()[i])).isCloseTo(between, within(0.01 * between));
                double left = 1 - new double[] {0.5, 0.3, 0.2}[gone];
                double step = GroupSums.drop(STEPS, gone)[i] / left;
                assertThat(reduced.roundingStep()[i]).isCloseTo(step, within(0.01 * step));
            }
        }
    }

    private static double[][] spots(Random random, int count) {
        double[][] spots = new double[count][];
        for (int i = 0; i < count; i++) {
            spots[i] = new double[] {0.5 + 5e-4 * random.nextGaussian(), 0.3 + 3e-4 * random.nextGaussian(),
                0.2 + 2e-4 * random.nextGaussian()};
        }
        return spots;
    }

    /**
     * Without the third of 0.5, 0.3 and 0.2 the first is 0.625 of 0.8: ((0.375 x 0.01)^2 + (0.625 x 0.02)^2) / 0.8^2 =
     * 2.66113e-4 a spot, of two spots in one particle sqrt(2 x 2.66113e-4) / 2 = 0.0115350.
     */
    @Test
    void without_an_element_stated_uncertainties_are_closed_again_too() {
        double[] spot = {0.5, 0.3, 0.2};
        GroupSums sums = Sums.stated(List.<double[][]>of(new double[][] {spot, spot}), new double[] {0.01, 0.02, 0.03}, STEPS);
        assertThat(sums.withoutElement(2).countingError(0).orElseThrow()).isCloseTo(0.0115350, within(1e-7));
        assertThat(sums.withoutElement(2).countingError(1).orElseThrow()).isCloseTo(0.0115350, within(1e-7));
        // All three: ((0.5 x 0.01)^2 + 0.25 (0.02^2 + 0.03^2)) = 3.5e-4 a spot.
        assertThat(sums.countingError(0).orElseThrow()).isCloseTo(Math.sqrt(2 * 3.5e-4) / 2, within(1e-12));
        // Without the first: 0.3 is 0.6 of 0.5: ((0.4 x 0.02)^2 + (0.6 x 0.03)^2) / 0.5^2 = 1.552e-3 a spot.
        assertThat(sums.withoutElement(0).countingError(0).orElseThrow())
            .isCloseTo(Math.sqrt(2 * 1.552e-3) / 2, within(1e-9));
    }

    /** Spots 0.5 and 0.7, 0.2 and 0.3: squares 0.02 and 0.005; without the second particle one degree of freedom. */
    @Test
    void without_a_particle_its_scatter_is_gone() {
        GroupSums sums = Sums.of(List.of(new double[][] {{0.5, 0.5}, {0.7, 0.3}}, new double[][] {{0.2, 0.8}, {0.3, 0.7}}));
        assertThat(sums.withinMeanSquare(0).orElseThrow()).isCloseTo(0.0125, within(1e-12));
        assertThat(sums.without(1).withinMeanSquare(0).orElseThrow()).isCloseTo(0.02, within(1e-12));
        assertThat(sums.without(0).mean()[0]).isCloseTo(0.25, within(1e-12));
        assertThat(sums.only(1).withinMeanSquare(1).orElseThrow()).isCloseTo(0.005, within(1e-12));
        assertThat(sums.only(0).betweenDeviation(0, 0.6)).isZero();
    }
}
