package surfeit.segregation.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.segregation.sums.Sums;

/** Which scatter enters a verdict; invented spots of a binary, numbers worked out by hand. */
class RandomLadderTest {

    private static double[][] spots(double... fractions) {
        return Arrays.stream(fractions).mapToObj(f -> new double[] {f, 1 - f}).toArray(double[][]::new);
    }

    /** Every spot states the same uncertainty of both parts, of which a fraction of a half has 1 / sqrt 2. */
    private static GroupSums stated(double sigma, double[][]... particles) {
        return Sums.stated(List.of(particles), new double[] {sigma, sigma}, new double[2]);
    }

    private static RandomLadder population(GroupSums sums) {
        return RandomLadder.population(sums, 0, sums.mean()[0]);
    }

    /**
     * Three particles of two spots 0.02 apart each: MSW 0.0002, W = sqrt(0.0002 x 3 / 2) / 3 = 0.0057735, half of it
     * 0.0028868. Means 0.5 - d, 0.5 and 0.5 + d scatter d / sqrt 3: 0.00281 for d 0.00487, 0.00296 for d 0.00513.
     */
    @ParameterizedTest
    @CsvSource({"0.00487, true", "0.00513, false"})
    void particles_that_agree_better_than_half_of_what_their_spots_predict_are_suspicious(double d, boolean suspicious) {
        RandomLadder ladder = population(Sums.of(List.of(spots(0.49 - d, 0.51 - d), spots(0.49, 0.51),
            spots(0.49 + d, 0.51 + d))));
        assertThat(ladder.smallerThanSpotsPredict()).isEqualTo(suspicious);
        assertThat(ladder.source()).isEqualTo("scatter of particles");
        assertThat(ladder.parts()).hasSize(1);
        assertThat(ladder.parts().get(0).standardError()).isCloseTo(d / Math.sqrt(3), within(1e-12));
        assertThat(ladder.parts().get(0).degreesOfFreedom()).isEqualTo(2);
    }

    /** K of three particles of one spot with 0.02 each: 0.02 / sqrt 2 / sqrt 3 = 0.0081650, half of it 0.0040825. */
    @ParameterizedTest
    @CsvSource({"0.0070, true", "0.0071, false"})
    void so_are_those_that_agree_better_than_half_of_what_is_stated(double d, boolean suspicious) {
        GroupSums sums = stated(0.02, spots(0.5 - d), spots(0.5), spots(0.5 + d));
        assertThat(population(sums).smallerThanSpotsPredict()).isEqualTo(suspicious);
    }

    /** Two particles 0.5 -+ 0.001 of two spots 0.02 apart: W = sqrt(0.0002 x 1) / 2 = 0.0070711 is above 0.001. */
    @Test
    void two_particles_scatter_at_least_as_their_spots_do() {
        RandomLadder ladder = population(Sums.of(List.of(spots(0.489, 0.509), spots(0.491, 0.511))));
        assertThat(ladder.parts().get(0).standardError()).isCloseTo(0.0070711, within(1e-7));
        assertThat(ladder.parts().get(0).degreesOfFreedom()).isEqualTo(1);
        assertThat(ladder.smallerThanSpotsPredict()).isFalse();
        assertThat(ladder.source()).isEqualTo("scatter of two particles, at least that of their spots");
    }

    /** Two spots 0.02 apart: 0.01 on one degree of freedom; stated 0.02 each: 0.02 / sqrt 2 / sqrt 2 = 0.01. */
    @Test
    void one_particle_stands_on_its_spots_or_what_they_state_or_both_or_nothing() {
        RandomLadder both = population(stated(0.02, spots(0.49, 0.51)));
        assertThat(both.source()).isEqualTo("scatter of spots and their stated uncertainty, the wider");
        assertThat(both.parts()).hasSize(2)
            .allSatisfy(part -> assertThat(part.standardError()).isCloseTo(0.01, within(3e-6)));
        assertThat(both.parts()).extracting(part -> part.degreesOfFreedom())
            .containsExactly(1.0, Double.POSITIVE_INFINITY);
        assertThat(population(Sums.of(List.<double[][]>of(spots(0.49, 0.51)))).source()).isEqualTo("scatter of spots");
        assertThat(population(stated(0.02, spots(0.5))).source()).isEqualTo("stated uncertainty of the spots");
        RandomLadder nothing = population(Sums.of(List.<double[][]>of(spots(0.5))));
        assertThat(nothing.source()).isEqualTo("not given");
        assertThat(nothing.parts()).isEmpty();
    }

    /** A step of 0.1 is 0.1 / sqrt 12 = 0.0288675, in every part and however many spots there are. */
    @Test
    void no_part_is_smaller_than_the_rounding() {
        GroupSums sums = stated(0.02, spots(0.49, 0.51));
        GroupSums coarse = new GroupSums(sums.particles(), sums.coSquares(), new double[] {0.1, 0});
        assertThat(population(coarse).parts()).hasSize(2)
            .allSatisfy(part -> assertThat(part.standardError()).isCloseTo(0.0288675, within(1e-7)));
    }

    /**
     * 0.1 % of the mass of 0.6 silver (107.868) and 0.4 copper (63.546), 90.1392: 0.000835644 and 0.00141849 of the atoms;
     * with a negative part the mean weight is that of silver.
     */
    @Test
    void the_additive_floor_is_a_mass_fraction_in_atoms() {
        AdditiveFloor floor = AdditiveFloor.ofMass(0.001, new double[] {107.868, 63.546});
        double[] filled = new double[2];
        floor.at(new double[] {0.6, 0.4}, filled);
        assertThat(filled).containsExactly(new double[] {0.000835644, 0.00141849}, within(1e-8));
        floor.at(new double[] {1.2, -0.2}, filled);
        assertThat(filled).containsExactly(new double[] {0.001, 0.00169748}, within(1e-8));
        double[] alone = new double[1];
        floor.without(0).at(new double[] {0.4}, alone);
        assertThat(alone).containsExactly(new double[] {0.001}, within(1e-12));
    }
}
