package surfeit.segregation.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.nominal.BelowLimit;
import surfeit.segregation.nominal.NominalTest;
import surfeit.statistics.RandomPart;

/** The rule that turns a test into words, at its limits: invented tests, expected words and numbers worked out by hand. */
class VerdictRuleTest {
    /** ln 1.25 = 0.22314; z(0.95) = 1.64485, t(0.95, 2) = 2.91999 (tables). */
    private static final VerdictRule RULE = new VerdictRule(0.05, Math.log(1.25));
    private static final NominalTest.Limits HALF = new NominalTest.Limits(0.5, 0.5, 0);
    private static final NominalTest.Limits RANGE = new NominalTest.Limits(0.4, 0.6, 0);

    /** A test whose parts begin as: enriched by a little, nothing significant, nothing equivalent. */
    private static final class Case {
        private double mean = 0.52;
        private double theta = 0.08;
        private double s = 0.05;
        private double u = 0.05;
        private String scale = "logit";
        private double p = 0.4;
        private double pEquivalence = 0.4;
        private double pRandom = 0.4;
        private double low = 0.48;
        private double high = 0.56;
        private double notMoreThan = 1.3;
        private int direction = 1;
        private List<RandomPart> parts = List.of(new RandomPart(0.012, 2));
        private double pAdjusted = 0.4;

        Case p(double value) {
            p = value;
            pAdjusted = value;
            return this;
        }

        Case equivalence(double value) {
            pEquivalence = value;
            return this;
        }

        Case between(double from, double meanAt, double to) {
            low = from;
            mean = meanAt;
            high = to;
            return this;
        }

        Case towards(int sign) {
            direction = sign;
            return this;
        }

        Case parts(RandomPart... some) {
            parts = List.of(some);
            return this;
        }

        Outcome against(NominalTest.Limits limits) {
            return RULE.outcome(new NominalTest(mean, theta, s, u, scale, p, pEquivalence, pRandom, low, high, notMoreThan,
                direction, parts), pAdjusted, limits, 0.016, "scatter");
        }
    }

    @ParameterizedTest
    @CsvSource({"0.05, 1, ENRICHED", "0.05, -1, DEPLETED", "0.0501, 1, INCONCLUSIVE", "0.001, 0, INCONCLUSIVE"})
    void a_shift_is_flagged_up_to_five_percent_in_its_direction(double pAdjusted, int direction, Verdict expected) {
        assertThat(new Case().p(pAdjusted).towards(direction).against(HALF).verdict()).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"0.05, 0.5, CONSISTENT, false", "0.0501, 0.5, INCONCLUSIVE, false", "0.05, 0.05, CONSISTENT, true",
        "0.05, 0.0501, CONSISTENT, false", "0.0501, 0.05, ENRICHED, false"})
    void equivalence_comes_first_and_then_a_significant_shift_is_a_small_one(double pEquivalence, double pAdjusted,
                                                                             Verdict expected, boolean small) {
        Outcome outcome = new Case().p(pAdjusted).equivalence(pEquivalence).against(HALF);
        assertThat(outcome.verdict()).isEqualTo(expected);
        assertThat(outcome.smallShiftDetected()).isEqualTo(small);
    }

    @Test
    void nothing_that_tells_the_scatter_allows_no_verdict_whatever_the_shared_error_says() {
        Outcome outcome = new Case().p(0.001).equivalence(0.001).parts().against(HALF);
        assertThat(outcome.verdict()).isEqualTo(Verdict.INCONCLUSIVE);
        assertThat(outcome.reason()).contains(Reason.NO_REPEAT_AND_NO_SIGMA);
        assertThat(outcome.lean()).isEmpty();
        assertThat(outcome.pValue()).isEmpty();
        assertThat(outcome.pAdjusted()).isEmpty();
        assertThat(outcome.pEquivalence()).isEmpty();
        assertThat(outcome.degreesOfFreedom()).isEmpty();
        assertThat(outcome.notMoreThanFactor()).isEmpty();
        assertThat(outcome.spotsAgreeOnShift()).isFalse();
        assertThat(outcome.uncertaintyRandom()).isZero();
        assertThat(outcome.uncertainty()).isEqualTo(0.016);
    }

    /** 1.64485 x 0.1356 = 0.22304, x 0.1357 = 0.22321; 2.91999 x 0.0764 = 0.22309, x 0.0765 = 0.22338. */
    @ParameterizedTest
    @CsvSource({"0.1356, 0.0764, BETWEEN", "0.1357, 0.0764, CALIBRATION", "0.1356, 0.0765, SCATTER",
        "0.1357, 0.0765, CALIBRATION_AND_SCATTER", "NaN, 0.0764, BETWEEN", "NaN, NaN, SCATTER",
        "0.1357, NaN, CALIBRATION_AND_SCATTER"})
    void what_reaches_the_margin_is_the_reason(double u, double s, Reason expected) {
        Case test = new Case();
        test.u = u;
        test.s = s;
        assertThat(test.against(HALF).reason()).contains(expected);
    }

    /** 1.64485 x 0.0765 = 0.12583: the part with few degrees of freedom decides. */
    @Test
    void of_two_random_parts_the_one_with_fewer_degrees_of_freedom_counts_in_the_reason() {
        Case test = new Case().parts(RandomPart.known(0.012), new RandomPart(0.011, 2));
        test.s = 0.0765;
        assertThat(test.against(HALF).reason()).contains(Reason.SCATTER);
        Case known = new Case().parts(RandomPart.known(0.012));
        known.s = 0.0765;
        assertThat(known.against(HALF).reason()).contains(Reason.BETWEEN);
    }

    @ParameterizedTest
    @CsvSource({"-0.1, CALIBRATION", "0, LIMIT_ABOVE_NOMINAL", "0.1, LIMIT_ABOVE_NOMINAL"})
    void where_every_value_lies_below_its_limit_the_limit_against_nominal_is_the_reason(double theta, Reason expected) {
        Case test = new Case();
        test.scale = BelowLimit.SCALE;
        test.theta = theta;
        assertThat(test.against(HALF).reason()).contains(expected);
    }

    @Test
    void a_verdict_needs_no_reason() {
        assertThat(new Case().p(0.01).against(HALF).reason()).isEmpty();
        assertThat(new Case().equivalence(0.01).against(HALF).reason()).isEmpty();
    }

    /** 1 - 0.2 / 2 = 0.9. */
    @ParameterizedTest
    @CsvSource({"0.2, 1, ENRICHED", "0.2, -1, DEPLETED", "0.2001, 1, ", "0.2, 0, ", "0.05, 1, "})
    void nine_to_one_for_a_direction_is_a_lean(double p, int direction, Verdict expected) {
        assertThat(new Case().p(p).towards(direction).against(HALF).lean()).isEqualTo(Optional.ofNullable(expected));
    }

    @Test
    void an_equivalent_mean_leans_nowhere() {
        assertThat(new Case().p(0.1).equivalence(0.01).against(HALF).lean()).isEmpty();
    }

    /** Odds 1 x 1.25: 0.55556; 1 / 1.25: 0.44444. Range 0.4 to 0.6: odds 1.5 x 1.25: 0.65217; 0.66667 / 1.25: 0.34783. */
    @ParameterizedTest
    @CsvSource({"0.5, 0.5, 0.5556, 0.7, true", "0.5, 0.5, 0.5555, 0.7, false", "0.5, 0.5, 0.3, 0.4444, true",
        "0.5, 0.5, 0.3, 0.4445, false", "0.5, 0.5, 0.3, 0.7, false", "0.4, 0.6, 0.6522, 0.7, true",
        "0.4, 0.6, 0.6521, 0.7, false", "0.4, 0.6, 0.3, 0.3478, true", "0.4, 0.6, 0.3, 0.3479, false",
        "0, 0.6, 0, 0, false", "0.4, 1, 0.99, 1, false"})
    void beyond_the_margin_lies_a_whole_interval(double from, double to, double low, double high, boolean expected) {
        Outcome outcome = new Case().p(0.001).between(low, (low + high) / 2, high)
            .against(new NominalTest.Limits(from, to, 0));
        assertThat(outcome.beyondMargin()).isEqualTo(expected);
    }

    @Test
    void the_size_of_a_shift_is_told_against_a_point() {
        Outcome outcome = new Case().between(0.52, 0.6, 0.68).against(new NominalTest.Limits(0.4, 0.4, 0));
        requireEstimate(outcome.enrichmentFactor().orElseThrow(), 1.5, 1.3, 1.7);
        requireEstimate(outcome.difference(), 0.2, 0.12, 0.28);
        // Odds 1.5, 1.08333 and 2.125 over 0.66667.
        requireEstimate(outcome.oddsRatio().orElseThrow(), 2.25, 1.625, 3.1875);
    }

    @ParameterizedTest
    @CsvSource({"1, 0.6, 0.65, 0.7, 0.05, 0, 0.1, 1.08333, 1, 1.16667",
        "-1, 0.3, 0.36, 0.42, -0.04, -0.1, 0.02, 0.9, 0.75, 1.05"})
    void beyond_a_range_the_limit_on_that_side_counts(int direction, double low, double mean, double high,
                                                      double difference, double differenceLow, double differenceHigh,
                                                      double factor, double factorLow, double factorHigh) {
        Outcome outcome = new Case().towards(direction).between(low, mean, high).against(RANGE);
        requireEstimate(outcome.difference(), difference, differenceLow, differenceHigh);
        requireEstimate(outcome.enrichmentFactor().orElseThrow(), factor, factorLow, factorHigh);
    }

    @ParameterizedTest
    @CsvSource({"0.45, 0.55, 0, 0", "0.38, 0.55, -0.02, 0", "0.45, 0.63, 0, 0.03", "0.38, 0.63, -0.02, 0.03"})
    void inside_a_range_there_is_no_factor_and_only_what_reaches_out_is_a_difference(double low, double high,
                                                                                     double below, double above) {
        Outcome outcome = new Case().towards(0).between(low, 0.5, high).against(RANGE);
        assertThat(outcome.enrichmentFactor()).isEmpty();
        assertThat(outcome.oddsRatio()).isEmpty();
        requireEstimate(outcome.difference(), 0, below, above);
    }

    @Test
    void a_mean_below_zero_has_a_factor_of_nothing_and_no_odds() {
        Outcome outcome = new Case().towards(-1).between(0, -0.01, 0.02).against(new NominalTest.Limits(0.05, 0.05, 0));
        requireEstimate(outcome.enrichmentFactor().orElseThrow(), 0, 0, 0.4);
        requireEstimate(outcome.difference(), -0.06, -0.05, -0.03);
        assertThat(outcome.oddsRatio()).isEmpty();
    }

    @Test
    void against_nothing_there_is_no_factor_and_the_whole_of_an_element_has_no_odds() {
        Outcome absent = new Case().between(0.01, 0.02, 0.03).against(new NominalTest.Limits(0, 0, 0));
        assertThat(absent.enrichmentFactor()).isEmpty();
        assertThat(absent.oddsRatio()).isEmpty();
        assertThat(new Case().towards(-1).between(0.9, 1, 1).against(new NominalTest.Limits(0.9, 0.9, 0)).oddsRatio())
            .isEmpty();
        assertThat(new Case().towards(-1).between(0.8, 0.9, 1).against(new NominalTest.Limits(1, 1, 0)).oddsRatio())
            .isEmpty();
    }

    @Test
    void confidence_is_what_the_p_value_of_the_verdict_leaves() {
        assertThat(new Case().p(0.03).against(HALF).confidence()).hasValue(1 - 0.03);
        assertThat(new Case().p(0.03).equivalence(0.02).against(HALF).confidence()).hasValue(1 - 0.02);
        assertThat(new Case().against(HALF).confidence()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0.05, 1, 0.4, true", "0.0501, 1, 0.4, false", "0.05, 0, 0.4, false", "0.05, 1, 0.01, false"})
    void spots_agree_on_a_shift_that_calibration_alone_leaves_open(double pRandom, int direction, double p,
                                                                   boolean expected) {
        Case test = new Case().p(p).towards(direction);
        test.pRandom = pRandom;
        assertThat(test.against(HALF).spotsAgreeOnShift()).isEqualTo(expected);
    }

    /** The larger of the parts, joined with the shared error 0.016: 0.012 and 0.016 make 0.020. */
    @Test
    void the_largest_random_part_is_the_one_told() {
        Outcome outcome = new Case().parts(new RandomPart(0.009, 5), new RandomPart(0.012, 3), RandomPart.known(0.011))
            .against(HALF);
        assertThat(outcome.uncertaintyRandom()).isEqualTo(0.012);
        assertThat(outcome.degreesOfFreedom()).hasValue(3);
        assertThat(outcome.uncertainty()).isCloseTo(0.020, within(1e-12));
        assertThat(outcome.uncertaintyShared()).isEqualTo(0.016);
    }

    @Test
    void a_part_of_nothing_keeps_its_degrees_of_freedom() {
        assertThat(new Case().parts(new RandomPart(0, 4)).against(HALF).degreesOfFreedom()).hasValue(4);
    }

    @Test
    void a_margin_without_end_is_not_told() {
        Case test = new Case();
        assertThat(test.against(HALF).notMoreThanFactor()).hasValue(1.3);
        test.notMoreThan = Double.POSITIVE_INFINITY;
        assertThat(test.against(HALF).notMoreThanFactor()).isEmpty();
    }

    private static void requireEstimate(Estimate found, double value, double low, double high) {
        assertThat(found.value()).isCloseTo(value, within(1e-5));
        assertThat(found.low()).isCloseTo(low, within(1e-5));
        assertThat(found.high()).isCloseTo(high, within(1e-5));
    }
}
