package surfeit.segregation.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import surfeit.segregation.sums.Sums;
import surfeit.statistics.RandomPart;

/** What reference spots scatter, in a binary: v = R_q1 / R_1 - R_q2 / R_2; invented spots, numbers worked out by hand. */
class ReferenceScatterTest {
    private static final double[] HALF = {0.5, 0.5};
    /** v 0, 0.08 and -0.08: variance 0.0064. */
    private static final double[][] THREE = {{0.50, 0.50}, {0.52, 0.48}, {0.48, 0.52}};
    /** Means 0.51 and 0.49, v -0.0400160 and 0.0400160: standard deviation 0.0565912. */
    private static final double[][] TWO = {{0.50, 0.50}, {0.52, 0.48}};
    private static final double[][] ONE = {{0.50, 0.50}};
    /** Two particles of two spots each: mean square within 0.0002, mean 0.705: sqrt(0.0002) / 0.207975 = 0.0679993. */
    private static final GroupSums REPEATED = Sums.of(List.of(spots(0.69, 0.71), spots(0.70, 0.72)));
    /** Three particles of one spot: standard deviation 0.1, mean 0.7: 0.1 / 0.21 = 0.476190. */
    private static final GroupSums SINGLE_SPOTS = Sums.of(List.of(spots(0.6), spots(0.7), spots(0.8)));

    private static double[][] spots(double... fractions) {
        double[][] spots = new double[fractions.length][];
        for (int i = 0; i < spots.length; i++) {
            spots[i] = new double[] {fractions[i], 1 - fractions[i]};
        }
        return spots;
    }

    private static Optional<RandomPart> scatter(double[][] reference, GroupSums sums, double... stated) {
        Optional<double[][]> uncertainties = Optional.empty();
        if (stated.length > 0) {
            double[][] each = new double[reference.length][];
            for (int i = 0; i < each.length; i++) {
                each[i] = new double[] {stated[0], stated[0]};
            }
            uncertainties = Optional.of(each);
        }
        ReferenceCorrection correction = ReferenceCorrection.of(reference, uncertainties, HALF, new double[2], 0.9,
            Sums.constantFloor(0, 2), false).orElseThrow();
        return ReferenceScatter.of(correction, sums, sums.mean(), 0);
    }

    private static void require(Optional<RandomPart> found, double error, double df) {
        assertThat(found.orElseThrow().standardError()).isCloseTo(error, within(1e-6));
        assertThat(found.orElseThrow().degreesOfFreedom()).isEqualTo(df);
    }

    /** sqrt(0.0064 / 3). */
    @Test
    void three_spots_tell_it_themselves_whatever_else_is_known() {
        require(scatter(THREE, REPEATED), 0.0461880, 2);
        require(scatter(THREE, SINGLE_SPOTS, 0.5), 0.0461880, 2);
    }

    /** 0.0679993 / sqrt 2 and, with spots a tenth as far apart, 0.0565912 / sqrt 2. */
    @Test
    void of_two_spots_and_the_spots_within_particles_the_larger_scatter_counts() {
        require(scatter(TWO, REPEATED), 0.0480828, 2);
        require(scatter(TWO, Sums.of(List.of(spots(0.704, 0.706), spots(0.704, 0.706)))), 0.0400160, 1);
    }

    /** 0.476190 / sqrt 2; with the stated 0.03: sqrt((0.03 / 0.51)^2 + (0.03 / 0.49)^2) / sqrt 2 = 0.0600361. */
    @Test
    void two_spots_alone_are_too_few_and_the_particles_join_unless_an_uncertainty_is_stated() {
        require(scatter(TWO, SINGLE_SPOTS), 0.336718, 2);
        require(scatter(TWO, SINGLE_SPOTS, 0.03), 0.0600361, Double.POSITIVE_INFINITY);
        require(scatter(TWO, SINGLE_SPOTS, 0.01), 0.0400160, 1);
    }

    @Test
    void one_spot_takes_the_scatter_within_particles_or_the_stated_uncertainty_or_that_of_the_particles() {
        require(scatter(ONE, REPEATED), 0.0679993, 2);
        require(scatter(ONE, SINGLE_SPOTS, 0.01), Math.sqrt(2) * 0.02, Double.POSITIVE_INFINITY);
        require(scatter(ONE, SINGLE_SPOTS), 0.476190, 2);
    }

    @Test
    void one_spot_beside_one_spot_tells_nothing() {
        assertThat(scatter(ONE, Sums.of(List.<double[][]>of(spots(0.7))))).isEmpty();
    }

    /** Two degrees of freedom of two spots in one particle are one; the particle has none beside it to join. */
    @Test
    void two_spots_beside_one_particle_of_two_spots_keep_their_one_degree_of_freedom() {
        require(scatter(TWO, Sums.of(List.<double[][]>of(spots(0.704, 0.706)))), 0.0400160, 1);
    }

    @Test
    void a_mean_of_nothing_or_of_all_has_no_logit() {
        assertThat(scatter(THREE, Sums.of(List.of(spots(1), spots(1))))).isEmpty();
        assertThat(scatter(THREE, Sums.of(List.of(spots(0), spots(0))))).isEmpty();
    }
}
