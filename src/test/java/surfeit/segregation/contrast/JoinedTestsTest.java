package surfeit.segregation.contrast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.nominal.NominalTest;
import surfeit.statistics.RandomPart;

/** Two readings of one group, with what lies below its limit as nothing and as the limit, made one; numbers invented. */
class JoinedTestsTest {
    private static final List<RandomPart> NARROW = List.of(new RandomPart(0.01, 2));
    private static final List<RandomPart> WIDE = List.of(new RandomPart(0.02, 2));

    private static NominalTest nominal(double mean, double theta, double s, double p, int direction, String scale,
                                       List<RandomPart> parts) {
        return new NominalTest(mean, theta, s, s / 2, scale, p, 2 * p, p / 2, mean - s, mean + s, 1 + s, direction, parts);
    }

    @Test
    void a_group_has_the_wider_interval_the_larger_p_and_the_middle_of_both_means() {
        NominalTest zero = nominal(0.10, -0.4, 0.03, 0.01, -1, "logit", NARROW);
        NominalTest limit = nominal(0.14, -0.2, 0.05, 0.04, -1, "hull", WIDE);
        for (NominalTest joined : List.of(zero.join(limit), limit.join(zero))) {
            assertThat(joined.mean()).isCloseTo(0.12, within(1e-12));
            assertThat(joined.theta()).isCloseTo(-0.3, within(1e-12));
            assertThat(joined.sTheta()).isEqualTo(0.05);
            assertThat(joined.uTheta()).isEqualTo(0.025);
            assertThat(joined.p()).isEqualTo(0.04);
            assertThat(joined.pEquivalence()).isEqualTo(0.08);
            assertThat(joined.pRandom()).isEqualTo(0.02);
            assertThat(joined.low()).isCloseTo(0.07, within(1e-12));
            assertThat(joined.high()).isCloseTo(0.19, within(1e-12));
            assertThat(joined.notMoreThan()).isEqualTo(1.05);
            assertThat(joined.scale()).isEqualTo("hull");
            assertThat(joined.direction()).isEqualTo(-1);
            assertThat(joined.parts()).isEqualTo(WIDE);
        }
    }

    @ParameterizedTest
    @CsvSource({"1, 1, 0.04, 1", "1, -1, 1, 0", "0, 0, 1, 0", "1, 0, 1, 0"})
    void a_shift_counts_only_where_both_point_the_same_way(int first, int second, double p, int direction) {
        NominalTest joined = nominal(0.1, 0.4, 0.03, 0.01, first, "logit", NARROW)
            .join(nominal(0.1, 0.4, 0.03, 0.04, second, "logit", NARROW));
        assertThat(joined.p()).isEqualTo(p);
        assertThat(joined.direction()).isEqualTo(direction);
        assertThat(joined.scale()).isEqualTo("logit");
    }

    @Test
    void a_reading_without_scatter_takes_the_parts_of_the_other() {
        NominalTest with = nominal(0.1, 0.4, 0.03, 0.01, 1, "logit", NARROW);
        NominalTest without = nominal(0.1, 0.4, 0.03, 0.01, 1, "logit", List.of());
        assertThat(without.join(with).parts()).isEqualTo(NARROW);
        assertThat(with.join(without).parts()).isEqualTo(NARROW);
    }

    private static ContrastTest contrast(double meanA, double meanB, double theta, double s, double df, double p,
                                         String scale, int direction) {
        return new ContrastTest(meanA, meanB, theta, s, df, 2 * s, 4 * s, p, 2 * p, s, scale, direction, Optional.empty());
    }

    /** The half widths 0.2 and 0.4 about 0.5 and 0.3: from -0.1 to 0.7, that is 0.4 wide and half their distance more. */
    @Test
    void a_contrast_reaches_as_far_as_both_readings() {
        ContrastTest zero = contrast(0.30, 0.20, 0.5, 0.05, 4, 0.01, "logit", 1);
        ContrastTest limit = contrast(0.32, 0.26, 0.3, 0.10, 3, 0.04, "hull", 1);
        for (ContrastTest joined : List.of(zero.join(limit), limit.join(zero))) {
            assertThat(joined.meanA()).isCloseTo(0.31, within(1e-12));
            assertThat(joined.meanB()).isCloseTo(0.23, within(1e-12));
            assertThat(joined.theta()).isCloseTo(0.4, within(1e-12));
            assertThat(joined.s()).isEqualTo(0.10);
            assertThat(joined.df()).isEqualTo(3);
            assertThat(joined.u()).isEqualTo(0.2);
            assertThat(joined.halfWidth()).isCloseTo(0.4 + 0.1, within(1e-12));
            assertThat(joined.linearHalfWidth()).isCloseTo(0.10 + 0.02, within(1e-12));
            assertThat(joined.p()).isEqualTo(0.04);
            assertThat(joined.pEquivalence()).isEqualTo(0.08);
            assertThat(joined.scale()).isEqualTo("hull");
            assertThat(joined.direction()).isEqualTo(1);
        }
    }

    @ParameterizedTest
    @CsvSource({"1, 1, 0.04, 1", "1, -1, 1, 0", "0, 0, 1, 0", "1, 0, 1, 0"})
    void a_difference_counts_only_where_both_point_the_same_way(int first, int second, double p, int direction) {
        ContrastTest joined = contrast(0.3, 0.2, 0.5, 0.05, 4, 0.01, "logit", first)
            .join(contrast(0.3, 0.2, 0.5, 0.05, 4, 0.04, "logit", second));
        assertThat(joined.p()).isEqualTo(p);
        assertThat(joined.direction()).isEqualTo(direction);
        assertThat(joined.scale()).isEqualTo("logit");
    }

    @Test
    void a_contrast_that_cannot_be_made_one_way_cannot_be_made() {
        ContrastTest made = contrast(0.3, 0.2, 0.5, 0.05, 4, 0.01, "logit", 1);
        ContrastTest not = new ContrastTest(0.3, 0.2, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN,
            1, Double.POSITIVE_INFINITY, "none", 1, Optional.of(Reason.NO_REPEAT_AND_NO_SIGMA));
        assertThat(made.join(not)).isSameAs(not);
        assertThat(not.join(made)).isSameAs(not);
    }
}
