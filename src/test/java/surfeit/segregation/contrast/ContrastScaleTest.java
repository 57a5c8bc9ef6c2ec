package surfeit.segregation.contrast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.sums.Sums;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.ReferenceCorrection;
import surfeit.segregation.uncertainty.SharedDifference;

/** Which scale a contrast is made on and what its random part is made of; invented groups, numbers worked out by hand. */
class ContrastScaleTest {
    private static final double MARGIN = Math.log(1.25);
    private static final double[] NONE = new double[2];

    /** Particles of one spot each. */
    private static GroupSums group(double... fractions) {
        return Sums.of(Arrays.stream(fractions).mapToObj(f -> new double[][] {{f, 1 - f}}).toList());
    }

    private static ContrastTest of(GroupSums a, GroupSums b, boolean paired, double floorA, double floorB) {
        SharedDifference shared = new SharedDifference(a.mean(), b.mean(), NONE, NONE, new double[] {floorA, floorA},
            new double[] {floorB, floorB}, 0.9);
        return ContrastTest.of(new ContrastTest.Side(a, Optional.empty()), new ContrastTest.Side(b, Optional.empty()), 0,
            paired, shared, MARGIN);
    }

    /** Two particles m - d and m + d have d as error of their mean; a fifth of the smaller part 0.3 is 0.06. */
    @ParameterizedTest
    @CsvSource({"0.7, 0.0599, 0.001, logit", "0.7, 0.0601, 0.001, hull", "0.7, 0.001, 0.0599, logit",
        "0.7, 0.001, 0.0601, hull", "0.3, 0.0599, 0.001, logit", "0.3, 0.0601, 0.001, hull",
        "0.3, 0.001, 0.0601, hull"})
    void scatter_from_a_fifth_of_the_smaller_part_on_has_the_plain_difference_count_too(double mean, double scatterA,
                                                                                        double scatterB, String scale) {
        ContrastTest test = of(group(mean - scatterA, mean + scatterA), group(mean - scatterB, mean + scatterB), false, 0, 0);
        assertThat(test.scale()).isEqualTo(scale);
        assertThat(test.pEquivalence()).isLessThanOrEqualTo(1);
        assertThat(test.pEquivalence() == 1).isEqualTo(scale.equals("hull"));
    }

    /** A twentieth of the smaller part 0.3 is 0.015. */
    @ParameterizedTest
    @CsvSource({"0.7, 0.0149, 0, logit", "0.7, 0.0151, 0, hull", "0.3, 0, 0.0149, logit", "0.3, 0, 0.0151, hull"})
    void so_does_an_additive_floor_from_a_twentieth_on(double mean, double floorA, double floorB, String scale) {
        GroupSums quiet = group(mean - 0.001, mean + 0.001);
        assertThat(of(quiet, quiet, false, floorA, floorB).scale()).isEqualTo(scale);
    }

    /**
     * A 0.7 +- 0.0601, B 0.75 without scatter: t = 0.05 / 0.0601 on one degree of freedom, p = 1 - 2/pi atan t = 0.558237;
     * on log odds t = 0.251314 x 0.21 / 0.0601 is larger.
     */
    @Test
    void of_both_scales_the_larger_p_counts() {
        ContrastTest test = of(group(0.6399, 0.7601), group(0.75, 0.75), false, 0, 0);
        assertThat(test.scale()).isEqualTo("hull");
        assertThat(test.p()).isCloseTo(0.5582372, within(1e-6));
        assertThat(test.direction()).isEqualTo(-1);
        assertThat(test.theta()).isCloseTo(-0.251314, within(1e-6));
    }

    /** 0.03 against 0.02 on two particles: t = 0.05 / sqrt(0.02^2 + 0.01^2) on 0.0005^2 / (0.02^4 + 0.01^4) = 1.470588. */
    @Test
    void a_mean_that_is_not_above_zero_has_the_plain_difference_alone() {
        ContrastTest test = of(group(-0.03, 0.01), group(0.03, 0.05), false, 0, 0);
        assertThat(test.scale()).isEqualTo("linear");
        assertThat(test.theta()).isNaN();
        assertThat(test.s()).isCloseTo(Math.sqrt(5e-4), within(1e-12));
        assertThat(test.df()).isCloseTo(1.470588, within(1e-6));
        assertThat(test.pEquivalence()).isEqualTo(1);
    }

    /** Steps 0.02 and 0.01: hypot(0.02 / 0.24, 0.01 / 0.25) / sqrt 12 = 0.0266840, also where all values are alike. */
    @Test
    void pairs_keep_the_rounding_of_both_sides() {
        GroupSums alikeA = group(0.6, 0.6, 0.6);
        GroupSums alikeB = group(0.5, 0.5, 0.5);
        GroupSums a = new GroupSums(alikeA.particles(), alikeA.coSquares(), new double[] {0.02, 0.02});
        GroupSums b = new GroupSums(alikeB.particles(), alikeB.coSquares(), new double[] {0.01, 0.01});
        ContrastTest test = of(a, b, true, 0, 0);
        assertThat(test.s()).isCloseTo(0.0266840, within(1e-7));
        assertThat(test.df()).isEqualTo(2);
    }

    /**
     * 0.01 / 0.21 and 0.01 / 0.1875 of the particles and twice sqrt(0.0064 / 3) of three reference spots (see
     * {@link surfeit.segregation.uncertainty.ReferenceScatterTest}): 0.0968436.
     */
    @Test
    void what_reference_spots_scatter_joins_on_both_sides() {
        double[][] spots = {{0.50, 0.50}, {0.52, 0.48}, {0.48, 0.52}};
        Optional<ReferenceCorrection> reference = ReferenceCorrection.of(spots, Optional.empty(), new double[] {0.5, 0.5},
            NONE, 0.9, Sums.constantFloor(0, 2), false);
        GroupSums a = group(0.69, 0.71);
        GroupSums b = group(0.74, 0.76);
        SharedDifference shared = new SharedDifference(a.mean(), b.mean(), NONE, NONE, NONE, NONE, 0.9);
        ContrastTest test = ContrastTest.of(new ContrastTest.Side(a, reference), new ContrastTest.Side(b, reference), 0,
            false, shared, MARGIN);
        assertThat(test.s()).isCloseTo(0.0968436, within(1e-6));
        // On the plain scale: 0.01 and 0.01 of the particles, 0.0461880 x 0.21 and x 0.1875 of the reference spots.
        ContrastTest hull = ContrastTest.of(new ContrastTest.Side(group(-0.01, 0.01), Optional.empty()),
            new ContrastTest.Side(b, reference), 0, false, new SharedDifference(new double[] {0, 1}, b.mean(), NONE, NONE,
                NONE, NONE, 0.9), MARGIN);
        assertThat(hull.reason()).as("one side alone is corrected, and nothing tells the other's scatter")
            .contains(Reason.NO_REPEAT_AND_NO_SIGMA);
    }

    @Test
    void one_spot_on_one_side_without_an_uncertainty_allows_no_contrast() {
        for (ContrastTest test : List.of(of(group(0.6), group(0.5, 0.52), false, 0, 0),
            of(group(0.5, 0.52), group(0.6), false, 0, 0))) {
            assertThat(test.reason()).contains(Reason.NO_REPEAT_AND_NO_SIGMA);
            assertThat(test.p()).isNaN();
        }
    }
}
