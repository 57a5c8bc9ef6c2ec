package surfeit.segregation.nominal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An element below its limit everywhere; expected numbers worked out with scipy 1.10.1 (norm) from the rule. */
class BelowLimitTest {
    private static final double MARGIN = Math.log(1.25);

    private static NominalTest test(double limit, double low, double high, double relative) {
        return BelowLimit.test(limit, new NominalTest.Limits(low, high, 0), relative, MARGIN);
    }

    /** 0.01 exp(1.644854 x 0.125) = 0.0122827; 2 Phi(-ln 2 / 0.125) = 2.93656e-8. */
    @Test
    void a_limit_below_nominal_bounds_the_element_and_speaks_for_depletion() {
        NominalTest test = test(0.01, 0.02, 0.02, 0.125);
        assertThat(test.direction()).isEqualTo(-1);
        assertThat(test.p()).isCloseTo(2.9365621e-8, within(1e-14));
        assertThat(test.high()).isCloseTo(0.0122827, within(1e-7));
        assertThat(test.low()).isZero();
        assertThat(test.theta()).isCloseTo(-0.703300, within(1e-6));
        assertThat(test.pEquivalence()).isEqualTo(1);
        assertThat(test.notMoreThan()).isInfinite();
        assertThat(test.scale()).isEqualTo(BelowLimit.SCALE);
    }

    @ParameterizedTest
    @CsvSource({"0.02, 0.125, 0", "0.03, 0.125, 0", "0.01, 0, -1"})
    void a_limit_at_nominal_or_above_and_an_analysis_without_calibration_error_leave_a_bound_only(double limit,
                                                                                                   double relative,
                                                                                                   int direction) {
        NominalTest test = test(limit, 0.02, 0.02, relative);
        assertThat(test.p()).isEqualTo(1);
        assertThat(test.direction()).isEqualTo(direction);
    }

    @Test
    void no_bound_lies_above_the_whole() {
        assertThat(test(0.9, 0.5, 0.5, 0.125).high()).isEqualTo(1);
    }

    /** "At most 5 %": with the margin 6.17284 %; Phi(-ln(0.0617284 / 0.04) / 0.125) = 2.593e-4, for 0.05 0.0459. */
    @ParameterizedTest
    @CsvSource({"0.04, 2.5934248e-4, -0.233615, 1", "0.05, 0.045920223, 0, 1.2432062"})
    void where_the_element_may_be_absent_a_low_limit_shows_it_to_be_in_order(double limit, double p, double theta,
                                                                             double notMoreThan) {
        NominalTest test = test(limit, 0, 0.05, 0.125);
        assertThat(test.pEquivalence()).isCloseTo(p, within(1e-6 * p));
        assertThat(test.theta()).isCloseTo(theta, within(1e-6));
        assertThat(test.notMoreThan()).isCloseTo(notMoreThan, within(1e-6));
        assertThat(test.direction()).isZero();
    }

    /** The upper limit with the margin is 6.17284 %. */
    @ParameterizedTest
    @CsvSource({"0.0617, 0", "0.0618, 1"})
    void without_calibration_error_the_limit_lies_inside_or_not(double limit, double expected) {
        assertThat(test(limit, 0, 0.05, 0).pEquivalence()).isEqualTo(expected);
    }
}
