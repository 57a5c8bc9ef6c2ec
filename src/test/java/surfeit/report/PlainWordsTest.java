package surfeit.report;

import static org.assertj.core.api.Assertions.assertThat;
import static surfeit.report.FindingBuilder.finding;
import static surfeit.report.Invented.AG_CU;
import static surfeit.report.Invented.AL_SI;
import static surfeit.report.Invented.SN_BI;
import static surfeit.report.Invented.sentence;
import static surfeit.report.OutcomeBuilder.consistent;
import static surfeit.report.OutcomeBuilder.depleted;
import static surfeit.report.OutcomeBuilder.enriched;
import static surfeit.report.OutcomeBuilder.inconclusive;

import org.junit.jupiter.api.Test;
import surfeit.rival.Rival.CouldExplain;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Verdict;

class PlainWordsTest {

    @Test
    void four_particles_speak_about_particles_of_the_kind_and_a_binary_is_said_once() {
        assertThat(sentence(AG_CU, Invented.copperRichPatches())).isEqualTo(
            "dark patch, on particles of this kind (4 measured): Cu enriched, x1.96 (1.71 to 2.15), Ag depleted with "
            + "it, seen individually on 4 of 4 particles. If nothing differed, a result this strong would appear in "
            + "at most 1 in 830 samples.");
    }

    @Test
    void particles_of_one_spot_do_not_count_against_what_others_show() {
        GroupBuilder group = new GroupBuilder("dark patch", 5, "P1", "P2", "P3", "P4")
            .element(finding("Ag", 0.601, depleted(0.219, 0.0121).factor(0.364, 0.284, 0.457).p(0.0012)).seenOn(1, 1, 4))
            .element(finding("Cu", 0.399, enriched(0.781, 0.0121).factor(1.957, 1.71, 2.15).p(0.0012)).seenOn(1, 1, 4));
        assertThat(sentence(AG_CU, group)).contains("seen individually on 1 of 4 particles (3 cannot be tested alone).");
    }

    @Test
    void two_elements_are_one_test_and_get_one_next_step() {
        GroupBuilder group = new GroupBuilder("rim", 6, "P1", "P2", "P3")
            .element(finding("Ag", 0.601, inconclusive(0.55, 0.02).factor(0.92, 0.83, 1.01).because(Reason.BETWEEN))
                .nextStep("One more particle would show a factor of 0.90"))
            .element(finding("Cu", 0.399, inconclusive(0.45, 0.02).factor(1.13, 0.99, 1.27).because(Reason.BETWEEN))
                .nextStep("One more particle would show a factor of 1.15"));
        assertThat(sentence(AG_CU, group)).endsWith("One more particle would show a factor of 1.15.")
            .doesNotContain("0.90", "For Ag", "For Cu");
    }

    @Test
    void a_mean_not_above_zero_is_told_by_its_bound() {
        GroupBuilder group = new GroupBuilder("skin", 5, "P1", "P2", "P3", "P4", "P5")
            .element("Al", 0.982, enriched(1.0002, 0.001).factor(1.0185, 1.0158, 1.0183).p(0.0005))
            .element("Si", 0.018, depleted(-0.0002, 0.001).interval(0, 0.00249).factor(0, 0, 0.138).p(0.0005));
        assertThat(sentence(AL_SI, group)).contains("Si depleted, not above zero, at most 0.249 at% (nominal 1.8 at%), Al "
            + "enriched with it.");
    }

    @Test
    void one_particle_says_nothing_about_the_others() {
        GroupBuilder group = new GroupBuilder("cell wall", 5, "P1")
            .element("Al", 0.88, enriched(0.953, 0.006).factor(1.083, 1.068, 1.095).p(0.0004))
            .element("Si", 0.12, depleted(0.047, 0.006).factor(0.392, 0.302, 0.505).p(0.0004));
        assertThat(sentence(AL_SI, group)).isEqualTo(
            "cell wall, on this particle: Si depleted, x0.39 (0.30 to 0.51), Al enriched with it. One particle says "
            + "nothing about the others. If nothing differed, a result this strong would appear in at most 1 in 1000 "
            + "samples.");
    }

    @Test
    void one_spot_without_sigma_says_why_it_tells_nothing() {
        GroupBuilder group = new GroupBuilder("bright rim", 1, "P1")
            .element(spotWithoutSigma("Sn", 0.57, 0.47, 0.825))
            .element(spotWithoutSigma("Bi", 0.43, 0.53, 1.233));
        assertThat(sentence(SN_BI, group)).isEqualTo(
            "bright rim, on this spot: Bi inconclusive, x1.23 (1.03 to 1.43). One spot without a repeat and without a "
            + "stated uncertainty: nothing tells its scatter, and the interval holds the calibration error only. "
            + "Repeat the spot or give its sigma.");
    }

    private static FindingBuilder spotWithoutSigma(String symbol, double nominal, double mean, double factor) {
        return finding(symbol, nominal, inconclusive(mean, 0.05).factor(factor, factor - 0.2, factor + 0.2)
            .because(Reason.NO_REPEAT_AND_NO_SIGMA)).nextStep("Repeat the spot or give its sigma.");
    }

    @Test
    void two_particles_lead_with_themselves_and_are_weak_about_their_kind() {
        GroupBuilder group = new GroupBuilder("dark patch", 6, "P1", "P2")
            .element(finding("Ag", 0.601, inconclusive(0.35, 0.08).factor(0.58, 0.02, 1.51).because(Reason.SCATTER))
                .these(depleted(0.35, 0.02).factor(0.58, 0.49, 0.68).p(0.004))
                .seenOn(2, 2).nextStep("Measure a third particle"))
            .element(finding("Cu", 0.399, inconclusive(0.65, 0.08).factor(1.63, 0.23, 2.47).because(Reason.SCATTER)
                .lean(Verdict.ENRICHED)).these(enriched(0.65, 0.02).factor(1.63, 1.48, 1.77).p(0.004))
                .seenOn(2, 2).nextStep("Measure a third particle"));
        assertThat(sentence(AG_CU, group)).isEqualTo(
            "dark patch, on these 2 particles: Cu enriched, x1.63 (1.48 to 1.77), Ag depleted with it, seen "
            + "individually on 2 of 2 particles. If nothing differed, a result this strong would appear in at most 1 "
            + "in 250 samples. For particles of this kind (weak, two particles): Cu inconclusive, leans enriched, "
            + "x1.6 (0.23 to 2.5). Measure a third particle.");
    }

    @Test
    void consistent_says_within_which_factor_it_was_shown() {
        OutcomeBuilder silicon = consistent(0.1215, 0.004).factor(1.0125, 0.95, 1.08).pEquivalence(0.004);
        assertThat(sentence(AL_SI, quietMatrix(silicon))).isEqualTo(
            "matrix, on particles of this kind (4 measured): Si consistent, x1.013 (0.950 to 1.080), Al with it: "
            + "shown to lie within a factor (odds) of 1.25 of nominal. If the shift reached that margin, a result "
            + "this close to nominal would appear in at most 1 in 250 samples.");
    }

    @Test
    void a_small_shift_inside_the_margin_is_told() {
        OutcomeBuilder silicon = consistent(0.127, 0.002).factor(1.058, 1.02, 1.096).difference(0.007, 0.003, 0.011)
            .pEquivalence(0.02).smallShift();
        assertThat(sentence(AL_SI, quietMatrix(silicon))).contains(
            "shown to lie within a factor (odds) of 1.25 of nominal; a small shift inside it is detected, upward.");
    }

    private static GroupBuilder quietMatrix(OutcomeBuilder silicon) {
        return new GroupBuilder("matrix", 12, "P1", "P2", "P3", "P4")
            .element("Al", 0.88, consistent(0.8785, 0.004).factor(0.998, 0.99, 1.007).pEquivalence(0.004))
            .element("Si", 0.12, silicon);
    }

    @Test
    void a_shift_the_calibration_can_make_is_inconclusive_with_a_bound_and_a_next_step() {
        assertThat(sentence(AG_CU, Invented.matrix())).isEqualTo(
            "matrix, on particles of this kind (4 measured): Cu inconclusive, leans depleted, x0.80 (0.61 to 1.01). "
            + "The spots agree among themselves; a shift of 8.0 at% is no larger than the calibration error can make. "
            + "Shifts beyond a factor (odds) of 1.86 are excluded. The shift repeats from spot to spot; whether it is "
            + "chemistry or calibration cannot be told from these data. Measure 5 spots on a reference piece, or "
            + "compare features.");
    }

    @Test
    void scatter_that_hides_the_answer_is_named_with_the_next_step() {
        assertThat(sentence(SN_BI, scattered(Reason.SCATTER, 2.3041))).isEqualTo(
            "sphere, on particles of this kind (3 measured): Bi inconclusive, x1.20 (0.80 to 1.60). The particles "
            + "differ too much to tell. Shifts beyond a factor (odds) of 2.31 are excluded. 3 more particles would "
            + "show a factor of 1.3.");
    }

    @Test
    void both_causes_and_the_margin_case_have_their_own_words() {
        assertThat(sentence(SN_BI, scattered(Reason.CALIBRATION_AND_SCATTER, 2.3))).contains(
            "The particles differ too much, and the calibration error alone could make such a shift.");
        assertThat(sentence(SN_BI, scattered(Reason.BETWEEN, 2.3))).contains(
            "Near the margin: a shift of about +8.6 at%, between -0.4 and +17.2 at%.");
    }

    @Test
    void a_bound_that_the_data_do_not_give_is_said() {
        GroupBuilder group = new GroupBuilder("sphere", 9, "P1", "P2", "P3")
            .element("Sn", 0.57, inconclusive(0.5, 0.3).because(Reason.SCATTER))
            .element("Bi", 0.43, inconclusive(0.5, 0.3).interval(0, 1).factor(1.16, 0, 2.33).because(Reason.SCATTER));
        assertThat(sentence(SN_BI, group)).endsWith("The particles differ too much to tell. These data set no "
            + "bound to the shift.");
    }

    /** Invented: a hundredth of the nominal is left, one spot is below its limit. No calibration is wrong by that much. */
    @Test
    void a_shift_far_beyond_the_calibration_error_is_not_laid_to_it() {
        GroupBuilder group = new GroupBuilder("sphere", 3, "P1", "P2", "P3")
            .element("Sn", 0.57, inconclusive(0.99, 0.004).difference(0.42, 0.38, 0.43).spotsAgree()
                .because(Reason.CALIBRATION_AND_SCATTER))
            .element("Bi", 0.43, inconclusive(0.01, 0.004).difference(-0.42, -0.43, -0.38).factor(0.02, 0, 0.12).spotsAgree()
                .because(Reason.CALIBRATION_AND_SCATTER));
        assertThat(sentence(SN_BI, group)).contains("differ too much to tell.").doesNotContain("calibration");
    }

    private static GroupBuilder scattered(Reason reason, double bound) {
        return new GroupBuilder("sphere", 9, "P1", "P2", "P3")
            .element(finding("Sn", 0.57, inconclusive(0.484, 0.045).factor(0.85, 0.6, 1.1).because(reason)
                .notMoreThan(bound)).nextStep("3 more particles would show a factor of 1.3"))
            .element(finding("Bi", 0.43, inconclusive(0.516, 0.045).factor(1.2, 0.8, 1.6).because(reason)
                .difference(0.086, -0.004, 0.172).notMoreThan(bound)).nextStep("3 more particles would show a factor "
                + "of 1.3"));
    }

    @Test
    void what_only_the_measured_particles_show_is_said_beside() {
        GroupBuilder group = new GroupBuilder("sphere", 9, "P1", "P2", "P3")
            .element(finding("Sn", 0.57, inconclusive(0.484, 0.045).because(Reason.SCATTER))
                .these(depleted(0.484, 0.01).factor(0.849, 0.81, 0.888).p(0.01)))
            .element(finding("Bi", 0.43, inconclusive(0.516, 0.045).factor(1.2, 0.8, 1.6).because(Reason.SCATTER))
                .these(enriched(0.516, 0.01).factor(1.2, 1.15, 1.25).p(0.01)));
        assertThat(sentence(SN_BI, group)).contains(
            "On these 3 particles themselves: Bi enriched, x1.200 (1.150 to 1.250), Sn depleted with it.");
    }

    @Test
    void the_strongest_cause_that_could_do_it_alone_is_named() {
        GroupBuilder group = Invented.copperRichPatches()
            .rival(Invented.rival("patch smaller than the interaction volume.", CouldExplain.YES, 2.1))
            .rival(Invented.rival("local tilt", CouldExplain.YES, 2.0))
            .rival(Invented.rival("coating", CouldExplain.IN_PART, 1.1));
        assertThat(sentence(AG_CU, group)).endsWith(
            "Could alone be explained by: patch smaller than the interaction volume (and 1 other cause).");
    }

    @Test
    void causes_are_not_named_where_there_is_nothing_to_explain() {
        GroupBuilder group = quietMatrix(consistent(0.1215, 0.004).factor(1.0125, 0.95, 1.08)
            .pEquivalence(0.004))
            .rival(Invented.rival("local tilt", CouldExplain.YES, 2.0));
        assertThat(sentence(AL_SI, group)).doesNotContain("explained by");
    }

    @Test
    void a_verdict_that_hangs_on_one_particle_names_it() {
        GroupBuilder group = new GroupBuilder("dark patch", 9, "P1", "P2", "")
            .element(finding("Ag", 0.601, depleted(0.4, 0.05).factor(0.67, 0.5, 0.9).p(0.03)).fragileWithout("P2", ""))
            .element(finding("Cu", 0.399, enriched(0.6, 0.05).factor(1.5, 1.1, 1.9).p(0.03)).fragileWithout("P2", ""));
        assertThat(sentence(AG_CU, group)).endsWith("Fragile: without P2 or the unnamed particle the verdict changes.");
    }

    @Test
    void no_sentence_claims_to_be_sure_or_probable() {
        assertThat(Invented.summary(AG_CU, Invented.copperRichPatches().build(), Invented.matrix().build()))
            .hasSize(2).noneMatch(text -> text.matches(".*\\b(sure|probabl\\w*|certain)\\b.*"));
    }
}
