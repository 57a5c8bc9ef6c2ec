package surfeit.segregation.contrast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.element.Element;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Scope;
import surfeit.segregation.sums.Sums;
import surfeit.segregation.uncertainty.CalibrationError;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.spot.Judgement;

/** What a reader is told of a contrast, at its limits: invented tests, expected words and numbers worked out by hand. */
class GroupContrastTest {
    private static final List<Element> ELEMENTS = List.of(Element.of("Ag"), Element.of("Cu"));

    private final GroupSums sums = Sums.of(List.of(new double[][] {{0.5, 0.5}}, new double[][] {{0.6, 0.4}}));
    private double theta = 0.1;
    private double s = 0.05;
    private double df = 2;
    private double u = 0.05;
    private double p = 0.4;
    private double pEquivalence = 0.4;
    private int direction = 1;
    private Optional<Reason> reason = Optional.empty();

    private Contrast.ElementContrast finding(double... adjusted) {
        ContrastTest test = new ContrastTest(0.52, 0.48, theta, s, df, u, 0.2, p, pEquivalence, 0.03, "logit", direction,
            reason);
        return contrast(side(OptionalDouble.of(15), Optional.of("s1"), false), side(OptionalDouble.of(15),
            Optional.of("s1"), false), 0.9, test).finding(adjusted, Judgement.DEFAULT).elements().get(0);
    }

    private GroupContrast contrast(ContrastSide a, ContrastSide b, double correlation, ContrastTest test) {
        return new GroupContrast(a, b, ELEMENTS, List.of(), List.of(), correlation, List.of(test, test), Scope.PARTICLES);
    }

    private ContrastSide side(OptionalDouble beamKev, Optional<String> session, boolean severalSessions) {
        return new ContrastSide("side", ELEMENTS, Sums.runs(sums), true, beamKev, session, severalSessions,
            new CalibrationError(0.1, Sums.constantFloor(0, 2), Optional.empty()));
    }

    @ParameterizedTest
    @CsvSource({"0.05, 1, HIGHER", "0.05, -1, LOWER", "0.0501, 1, INCONCLUSIVE", "0.001, 0, INCONCLUSIVE"})
    void a_difference_counts_up_to_five_percent_in_its_direction(double adjusted, int towards, Contrast.Word expected) {
        direction = towards;
        assertThat(finding(adjusted).verdict()).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"0.05, EQUIVALENT, 0.95", "0.0501, HIGHER, 0.99"})
    void equivalence_comes_first_and_confidence_is_what_its_p_value_leaves(double equivalence, Contrast.Word expected,
                                                                           double confidence) {
        pEquivalence = equivalence;
        assertThat(finding(0.01).verdict()).isEqualTo(expected);
        assertThat(finding(0.01).confidence().orElseThrow()).isCloseTo(confidence, within(1e-12));
    }

    @Test
    void what_is_inconclusive_has_no_confidence() {
        assertThat(finding(0.4).confidence()).isEmpty();
    }

    @Test
    void without_a_scatter_on_one_side_nothing_is_said_however_small_p_is() {
        reason = Optional.of(Reason.NO_REPEAT_AND_NO_SIGMA);
        p = Double.NaN;
        pEquivalence = 0.01;
        theta = Double.NaN;
        Contrast.ElementContrast finding = finding();
        assertThat(finding.verdict()).isEqualTo(Contrast.Word.INCONCLUSIVE);
        assertThat(finding.reason()).contains(Reason.NO_REPEAT_AND_NO_SIGMA);
        assertThat(finding.pValue()).isEmpty();
        assertThat(finding.pAdjusted()).isEmpty();
        assertThat(finding.pEquivalence()).isEmpty();
        assertThat(finding.oddsRatio()).isEmpty();
    }

    @Test
    void without_an_adjusted_p_nothing_is_said() {
        pEquivalence = 0.01;
        assertThat(finding().verdict()).isEqualTo(Contrast.Word.INCONCLUSIVE);
    }

    /** ln 1.25 = 0.22314; 1.64485 x 0.1356 = 0.22304, x 0.1357 = 0.22321; 2.91999 x 0.0764 = 0.22309, x 0.0765 = 0.22338. */
    @ParameterizedTest
    @CsvSource({"0.1356, 0.0764, 0.1, BETWEEN", "0.1357, 0.0764, 0.1, CALIBRATION", "0.1356, 0.0765, 0.1, SCATTER",
        "0.1357, 0.0765, 0.1, CALIBRATION_AND_SCATTER", "0.05, 0.01, NaN, SCATTER"})
    void what_reaches_the_margin_is_the_reason(double shared, double random, double logOdds, Reason expected) {
        u = shared;
        s = random;
        theta = logOdds;
        assertThat(finding(0.4).reason()).contains(expected);
    }

    @Test
    void a_word_needs_no_reason() {
        assertThat(finding(0.01).reason()).isEmpty();
    }

    /** exp 0.1 = 1.10517, exp -0.1 = 0.90484, exp 0.3 = 1.34986. */
    @Test
    void sizes_are_told_as_a_difference_and_as_odds() {
        Contrast.ElementContrast finding = finding(0.4);
        assertThat(finding.difference().value()).isCloseTo(0.04, within(1e-12));
        assertThat(finding.difference().low()).isCloseTo(0.01, within(1e-12));
        assertThat(finding.difference().high()).isCloseTo(0.07, within(1e-12));
        Estimate odds = finding.oddsRatio().orElseThrow();
        assertThat(odds.value()).isCloseTo(1.10517, within(1e-5));
        assertThat(odds.low()).isCloseTo(0.90484, within(1e-5));
        assertThat(odds.high()).isCloseTo(1.34986, within(1e-5));
    }

    /** In a binary the two p values are of one test, and the larger counts. */
    @Test
    void two_elements_are_one_test_and_one_without_a_p_value_is_none() {
        ContrastSide side = side(OptionalDouble.of(15), Optional.of("s1"), false);
        GroupContrast both = new GroupContrast(side, side, ELEMENTS, List.of(), List.of(), 0.9,
            List.of(withP(0.02), withP(0.03)), Scope.PARTICLES);
        assertThat(both.family()).containsExactly(0.03);
        GroupContrast one = new GroupContrast(side, side, ELEMENTS, List.of(), List.of(), 0.9,
            List.of(withP(0.02), withP(Double.NaN)), Scope.PARTICLES);
        assertThat(one.family()).isEmpty();
    }

    private static ContrastTest withP(double value) {
        return new ContrastTest(0.52, 0.48, 0.1, 0.05, 2, 0.05, 0.2, value, 0.4, 0.03, "logit", 1, Optional.empty());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "15 | 10 | s1 | s1 | 0   | Different beam energies",
        "15 |    | s1 | s1 | 0   | The beam energy of one is not stated",
        "   | 15 | s1 | s1 | 0   | The beam energy of one is not stated",
        "15 | 15 | s1 | s1 | 0.9 | ",
        "15 | 15 | s1 | s2 | 0   | Different sessions: the calibration",
        "15 | 15 | s1 | s1 | 0   | Quantified in different ways",
        "15 | 15 |    |    | 0   | No session is stated"})
    void what_keeps_the_calibration_error_from_cancelling_is_told(Double beamA, Double beamB, String sessionA,
                                                                  String sessionB, double correlation, String begin) {
        ContrastSide a = side(beam(beamA), Optional.ofNullable(sessionA), false);
        ContrastSide b = side(beam(beamB), Optional.ofNullable(sessionB), false);
        requireNote(contrast(a, b, correlation, withP(0.4)), begin);
    }

    @ParameterizedTest
    @CsvSource({"true, false", "false, true"})
    void a_side_of_several_sessions_shares_none_with_the_other(boolean severalA, boolean severalB) {
        ContrastSide a = side(OptionalDouble.of(15), Optional.empty(), severalA);
        ContrastSide b = side(OptionalDouble.of(15), Optional.empty(), severalB);
        requireNote(contrast(a, b, 0, withP(0.4)), "Different sessions: the calibration");
    }

    private static OptionalDouble beam(Double kev) {
        return kev == null ? OptionalDouble.empty() : OptionalDouble.of(kev);
    }

    private static void requireNote(GroupContrast contrast, String begin) {
        Optional<String> note = contrast.finding(new double[] {0.4}, Judgement.DEFAULT).note();
        if (begin == null) {
            assertThat(note).isEmpty();
        } else {
            assertThat(note.orElseThrow()).startsWith(begin);
        }
    }

    /** Pairs are compared from three particles in common on; those without a name are the same as no other. */
    @ParameterizedTest
    @CsvSource({"3, true, true, true", "2, true, true, false", "3, false, true, false", "3, true, false, false"})
    void three_particles_of_the_same_name_are_compared_pair_by_pair(int particles, boolean byParticle,
                                                                    boolean named, boolean paired) {
        double[][] spots = {{0.5, 0.5}, {0.6, 0.4}, {0.55, 0.45}};
        GroupSums some = Sums.of(Arrays.stream(spots).limit(particles).map(spot -> new double[][] {spot}).toList());
        ContrastSide own = new ContrastSide("side", ELEMENTS, Sums.runs(some), named, OptionalDouble.of(15),
            Optional.of("s1"), false, new CalibrationError(0.1, Sums.constantFloor(0, 2), Optional.empty()));
        GroupContrast contrast = GroupContrast.of(own, own, byParticle, true, Judgement.DEFAULT).orElseThrow();
        assertThat(contrast.common()).hasSize(paired ? particles : 0);
        assertThat(contrast.scope()).isEqualTo(Scope.PARTICLES);
    }

    @Test
    void one_particle_on_a_side_speaks_about_these_particles() {
        ContrastSide two = side(OptionalDouble.of(15), Optional.of("s1"), false);
        ContrastSide one = new ContrastSide("one", ELEMENTS, Sums.runs(Sums.of(List.<double[][]>of(
            new double[][] {{0.5, 0.5}, {0.6, 0.4}}))), true, OptionalDouble.of(15), Optional.of("s1"), false,
            new CalibrationError(0.1, Sums.constantFloor(0, 2), Optional.empty()));
        assertThat(GroupContrast.of(one, two, true, true, Judgement.DEFAULT).orElseThrow().scope())
            .isEqualTo(Scope.THESE_PARTICLES);
        assertThat(GroupContrast.of(two, two, true, true, Judgement.DEFAULT).orElseThrow().scope())
            .isEqualTo(Scope.PARTICLES);
    }
}
