package surfeit.report;

import static org.assertj.core.api.Assertions.assertThat;
import static surfeit.report.FindingBuilder.finding;
import static surfeit.report.Invented.atomic;
import static surfeit.report.Invented.sentence;
import static surfeit.report.OutcomeBuilder.consistent;
import static surfeit.report.OutcomeBuilder.depleted;
import static surfeit.report.OutcomeBuilder.enriched;
import static surfeit.report.OutcomeBuilder.inconclusive;

import org.junit.jupiter.api.Test;
import surfeit.composition.Nominal;
import surfeit.composition.NominalPart;
import surfeit.rival.Rival.CouldExplain;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Verdict;

/** Groups with more than two elements, ranges, limits and foreign elements. */
class PlainWordsOfManyTest {
    private static final Nominal CASTING = atomic("Al", 84.0, "Si", 12.0, "Cu", 2.0, "Mg", 1.0, "Fe", 0.6, "Mn", 0.4);
    private static final Nominal AL_SI_MG = atomic("Al", 87.0, "Si", 12.0, "Mg", 1.0);

    @Test
    void six_elements_are_told_by_verdict_with_the_element_that_alone_could_have_changed() {
        GroupBuilder group = new GroupBuilder("network", 24, "P1", "P2", "P3", "P4")
            .element(asNominal("Al", 0.84))
            .element(asNominal("Si", 0.12))
            .element(finding("Cu", 0.02, enriched(0.061, 0.006).factor(3.05, 2.4, 3.7).p(0.012)).seenOn(3, 4))
            .element(unsettled("Mg", 0.01, Reason.CALIBRATION, 1.561))
            .element(unsettled("Fe", 0.006, Reason.CALIBRATION, 2.201))
            .element(unsettled("Mn", 0.004, Reason.SCATTER, 3.4)).explanationSet("Cu");
        assertThat(sentence(CASTING, group)).isEqualTo(
            "network, on particles of this kind (4 measured): Cu enriched, x3.05 (2.40 to 3.70), seen individually on "
            + "3 of 4 particles; Al and Si consistent (shown to lie within a factor (odds) of 1.25 of nominal); Mg, "
            + "Fe and Mn inconclusive. If nothing differed, a result this strong would appear in at most 1 in 83 "
            + "samples. Mg and Fe: the spots agree among themselves; the shifts are no larger than the calibration "
            + "error can make. Shifts beyond a factor (odds) of 1.57 (Mg) and 2.21 (Fe) are excluded. Mn: the "
            + "particles differ too much to tell. Shifts beyond a factor (odds) of 3.4 are excluded. This alone could "
            + "come from Cu changing while the rest keeps its proportions. Measure more.");
    }

    @Test
    void several_flags_are_as_sure_as_the_weakest_and_an_empty_set_means_more_than_one_changed() {
        GroupBuilder group = new GroupBuilder("network", 24, "P1", "P2", "P3", "P4")
            .element(asNominal("Al", 0.87))
            .element(finding("Si", 0.12, depleted(0.06, 0.006).factor(0.5, 0.4, 0.6).p(0.002)).fragileWithout("P3"))
            .element("Mg", 0.01, enriched(0.03, 0.006).factor(3, 2, 4).p(0.03)).explanationSet();
        assertThat(sentence(AL_SI_MG, group)).isEqualTo(
            "network, on particles of this kind (4 measured): Si depleted, x0.50 (0.40 to 0.60); Mg enriched, x3.0 "
            + "(2.0 to 4.0); Al consistent (shown to lie within a factor (odds) of 1.25 of nominal). If nothing "
            + "differed, even the weakest of these would appear in at most 1 in 33 samples. No single element "
            + "changing explains this: more than one changed. Fragile: without P3 the verdict on Si changes.");
    }

    @Test
    void verdicts_that_hang_on_the_same_particles_are_told_of_together() {
        GroupBuilder group = new GroupBuilder("network", 3, "P1", "P2", "P3")
            .element(finding("Al", 0.87, enriched(0.95, 0.01).factor(1.1, 1.05, 1.15).p(0.03)).fragileWithout("P1", "P2", "P3"))
            .element(finding("Si", 0.12, depleted(0.03, 0.01).factor(0.3, 0.1, 0.6).p(0.03)).fragileWithout("P1", "P2", "P3"))
            .element("Mg", 0.01, inconclusive(0.005, 0.002).factor(0.5, 0.1, 0.9).lean(Verdict.DEPLETED)
                .because(Reason.SCATTER));
        assertThat(sentence(AL_SI_MG, group)).contains("; Mg inconclusive (leans depleted).")
            .contains("Fragile: without any one of its particles the verdicts on Al and Si change.");
    }

    @Test
    void one_of_several_elements_may_alone_have_changed() {
        GroupBuilder group = new GroupBuilder("network", 24, "P1", "P2", "P3")
            .element(asNominal("Al", 0.87))
            .element(asNominal("Si", 0.12))
            .element(asNominal("Mg", 0.01)).explanationSet("Si", "Mg");
        assertThat(sentence(AL_SI_MG, group)).endsWith(
            "This could come from one element alone changing while the rest keeps its proportions: Si or Mg.");
    }

    @Test
    void inside_a_range_the_mean_is_told_in_place_of_a_factor() {
        Nominal ranged = atomic("Al", new NominalPart.Balance(), "Si", new NominalPart.Range(0.11, 0.13));
        GroupBuilder group = new GroupBuilder("matrix", 12, "P1", "P2", "P3", "P4")
            .element("Al", 0.87, 0.89, consistent(0.8795, 0.003).pEquivalence(0.01))
            .element("Si", 0.11, 0.13, consistent(0.1205, 0.003).pEquivalence(0.01));
        assertThat(sentence(ranged, group)).startsWith(
            "matrix, on particles of this kind (4 measured): Si consistent, 12.05 at% (11.45 to 12.65), inside its "
            + "range 11 to 13 at%, Al with it: shown to lie within a factor (odds) of 1.25 of that range.");
    }

    @Test
    void beyond_a_range_the_factor_names_the_limit_it_refers_to() {
        Nominal ranged = atomic("Al", new NominalPart.Balance(), "Si", new NominalPart.Range(0.11, 0.13));
        GroupBuilder group = new GroupBuilder("network", 12, "P1", "P2", "P3", "P4")
            .element("Al", 0.87, 0.89, depleted(0.76, 0.01).factor(0.87, 0.85, 0.9).p(0.01))
            .element("Si", 0.11, 0.13, enriched(0.24, 0.01).factor(1.85, 1.7, 2).p(0.01));
        assertThat(sentence(ranged, group)).contains("Si enriched, x1.85 (1.70 to 2.00) of its upper limit, 13 at%, "
            + "Al depleted with it.");
    }

    @Test
    void an_element_below_its_limit_everywhere_is_told_by_the_limit() {
        GroupBuilder group = new GroupBuilder("rim", 6, "P1", "P2", "P3")
            .element(asNominal("Al", 0.87))
            .element(asNominal("Si", 0.12))
            .element(finding("Mg", 0.01, depleted(0, 0.001).interval(0, 0.0037).p(0.0009)).belowLimit(6, 0.003, true));
        assertThat(sentence(AL_SI_MG, group)).contains(
            "Mg depleted: below its limit of 0.3 at% (assumed) in all 6 spots (nominal 1 at%); Al and Si consistent");
    }

    @Test
    void a_limit_above_nominal_is_the_reason() {
        GroupBuilder group = new GroupBuilder("rim", 6, "P1", "P2", "P3")
            .element(asNominal("Al", 0.87))
            .element(asNominal("Si", 0.12))
            .element(finding("Mg", 0.01, inconclusive(0, 0.001).because(Reason.LIMIT_ABOVE_NOMINAL))
                .belowLimit(6, 0.02, false).nextStep("A lower limit is needed: count longer"));
        assertThat(sentence(AL_SI_MG, group)).endsWith(
            "Mg: the limit of 2 at% lies above nominal, 1 at%, and every spot is below it. A lower limit is needed: "
            + "count longer.");
    }

    @Test
    void a_limit_inside_a_range_lies_above_its_lower_limit() {
        GroupBuilder group = new GroupBuilder("rim", 6, "P1", "P2", "P3")
            .element(asNominal("Al", 0.87))
            .element(asNominal("Si", 0.12))
            .element(finding("Mg", 0.002, 0.006, inconclusive(0, 0.001).because(Reason.LIMIT_ABOVE_NOMINAL))
                .belowLimit(6, 0.004, false));
        assertThat(sentence(AL_SI_MG, group)).endsWith(
            "Mg: the limit of 0.4 at% lies above the lower limit of nominal, 0.2 at%, and every spot is below it.");
    }

    @Test
    void a_cause_of_an_element_of_which_nothing_is_said_is_left_out() {
        GroupBuilder group = new GroupBuilder("rim", 6, "P1", "P2", "P3")
            .element(asNominal("Al", 0.87))
            .element("Si", 0.12, depleted(0.06, 0.006).factor(0.5, 0.4, 0.6).p(0.002))
            .element(unsettled("Mg", 0.01, Reason.SCATTER, 3.4)).rival(Invented.rivalOf("Mg", "its limit", CouldExplain.YES));
        assertThat(sentence(AL_SI_MG, group)).doesNotContain("explained by");
        assertThat(sentence(AL_SI_MG, group.rival(Invented.rivalOf("Si", "an overlap", CouldExplain.YES))))
            .contains("Could alone be explained by: an overlap.");
    }

    @Test
    void next_steps_that_differ_say_which_element_they_are_for() {
        GroupBuilder group = new GroupBuilder("rim", 6, "P1", "P2", "P3")
            .element(unsettled("Al", 0.87, Reason.CALIBRATION, 1.6)).element(unsettled("Si", 0.12, Reason.CALIBRATION, 1.5))
            .element(finding("Mg", 0.01, inconclusive(0, 0.001).because(Reason.LIMIT_ABOVE_NOMINAL))
                .belowLimit(6, 0.02, false).nextStep("A lower limit is needed: count longer"));
        assertThat(sentence(AL_SI_MG, group)).endsWith(
            "For Al and Si: Measure more. For Mg: A lower limit is needed: count longer.");
    }

    @Test
    void a_limit_hardly_below_nominal_cannot_tell_either() {
        GroupBuilder group = new GroupBuilder("rim", 6, "P1", "P2", "P3")
            .element(asNominal("Al", 0.87)).element(asNominal("Si", 0.12))
            .element(finding("Mg", 0.01, inconclusive(0, 0.001).because(Reason.CALIBRATION))
            .belowLimit(6, 0.009, false));
        assertThat(sentence(AL_SI_MG, group)).endsWith(
            "Mg: the limit lies below nominal by no more than the calibration error can make.");
    }

    @Test
    void foreign_and_unmeasured_elements_are_named() {
        GroupBuilder group = new GroupBuilder("rim", 6, "P1", "P2", "P3")
            .element(asNominal("Al", 0.88))
            .element(asNominal("Si", 0.12))
            .foreign(Invented.foreign("Fe", 0.012, 0.0085, 0.0155, true),
                Invented.foreign("Zn", 0.001, 0, 0.004, false))
            .notMeasured("Mg").rival(Invented.rival("local tilt", CouldExplain.NO, Double.NaN));
        assertThat(sentence(AL_SI_MG, group)).endsWith(
            "Also found, outside the nominal: Fe 1.20 at% (0.85 to 1.55). Mg is in no spot's list: left out of data "
            + "and nominal, not judged.");
    }

    private static FindingBuilder asNominal(String symbol, double nominal) {
        return finding(symbol, nominal, consistent(nominal, nominal / 20).factor(1, 0.9, 1.1).pEquivalence(0.01));
    }

    private static FindingBuilder unsettled(String symbol, double nominal, Reason reason, double bound) {
        return finding(symbol, nominal, inconclusive(nominal * 1.2, nominal / 5).factor(1.2, 0.8, 1.6).because(reason)
            .notMoreThan(bound)).nextStep("Measure more");
    }
}
