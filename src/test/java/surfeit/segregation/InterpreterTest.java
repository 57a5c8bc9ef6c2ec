package surfeit.segregation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static surfeit.segregation.InventedSpots.element;
import static surfeit.segregation.InventedSpots.group;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.composition.CompositionException;
import surfeit.composition.NominalText;
import surfeit.element.Element;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Scope;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.blocks.SpotSource;
import surfeit.segregation.screening.SpotScreening;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Form;
import surfeit.spot.Judgement;
import surfeit.spot.Sample;
import surfeit.spot.SpotCentre;

/** The whole interpretation on invented spots of brazing powder, solder and Al-Si. */
class InterpreterTest {
    private static final String AG_CU = "Ag:59.8,Cu:40.2";

    private static InventedSpots patchesAndMatrix() {
        return new InventedSpots()
            .add("patch", "P1", "Ag 20.1, Cu 79.9").add("patch", "P1", "Ag 19.6, Cu 80.4").add("matrix", "P1", "Ag 61.3, Cu 38.7")
            .add("patch", "P2", "Ag 22.4, Cu 77.6").add("patch", "P2", "Ag 21.9, Cu 78.1").add("matrix", "P2", "Ag 62.2, Cu 37.8")
            .add("patch", "P3", "Ag 21.2, Cu 78.8").add("patch", "P3", "Ag 20.4, Cu 79.6")
            .add("matrix", "P3", "Ag 61.8, Cu 38.2");
    }

    @Test
    void a_large_shift_on_three_particles_is_flagged_for_particles_of_the_kind() {
        GroupFinding patch = group(patchesAndMatrix().against(AG_CU), "patch");
        assertThat(patch.scope()).isEqualTo(Scope.PARTICLES);
        assertThat(element(patch, "Cu").outcome().verdict()).isEqualTo(Verdict.ENRICHED);
        assertThat(element(patch, "Ag").outcome().verdict()).isEqualTo(Verdict.DEPLETED);
        assertThat(element(patch, "Cu").outcome().enrichmentFactor().orElseThrow().value()).isCloseTo(1.967, within(0.001));
        assertThat(element(patch, "Cu").seenOn()).contains(new ElementFinding.SeenOn(3, 3, 3));
    }

    @Test
    void two_elements_are_one_test_with_one_p() {
        GroupFinding patch = group(patchesAndMatrix().against(AG_CU), "patch");
        assertThat(element(patch, "Ag").outcome().pAdjusted()).isEqualTo(element(patch, "Cu").outcome().pAdjusted());
        assertThat(element(patch, "Ag").outcome().pValue()).isEqualTo(element(patch, "Cu").outcome().pValue());
        assertThat(patch.explanationSet()).isEmpty();
    }

    @Test
    void a_shift_no_larger_than_the_calibration_error_is_inconclusive_with_a_bound_and_a_next_step() {
        ElementFinding silver = element(group(patchesAndMatrix().against(AG_CU), "matrix"), "Ag");
        assertThat(silver.outcome().verdict()).isEqualTo(Verdict.INCONCLUSIVE);
        assertThat(silver.outcome().reason()).contains(Reason.CALIBRATION);
        assertThat(silver.outcome().notMoreThanFactor().orElseThrow()).isBetween(1.3, 1.7);
        assertThat(silver.nextStep().orElseThrow()).startsWith("Measure 5 spots on a piece of known composition");
    }

    @Test
    void features_of_the_same_particles_are_compared_pair_by_pair() {
        Contrast contrast = patchesAndMatrix().against(AG_CU).contrasts().get(0);
        assertThat(contrast.paired()).isTrue();
        assertThat(contrast.commonParticles()).containsExactly("P1", "P2", "P3");
        assertThat(contrast.correlation()).isEqualTo(0.9);
        assertThat(contrast.elements().get(1).verdict()).isEqualTo(Contrast.Word.HIGHER);
    }

    @Test
    void spots_without_a_particle_are_one_particle_unless_said_to_be_independent() {
        InventedSpots spots = new InventedSpots().add("", "", "Ag 30, Cu 70").add("", "", "Ag 31, Cu 69")
            .add("", "", "Ag 30.5, Cu 69.5");
        GroupFinding one = group(spots.against(AG_CU), "unlabelled");
        assertThat(one.scope()).isEqualTo(Scope.THIS_PARTICLE);
        assertThat(one.particles()).containsExactly("unnamed particle");
        assertThat(one.caveats()).extracting(Caveat::code).contains("feature-not-stated", "particle-not-stated");
        Sample sample = sample(AG_CU, true, Judgement.DEFAULT);
        assertThat(spots.against(sample, GroupBy.FEATURE).groups().get(0).scope()).isEqualTo(Scope.PARTICLES);
    }

    @Test
    void one_spot_without_uncertainty_is_inconclusive_and_enters_no_family() {
        ElementFinding copper = element(new InventedSpots().add("rim", "P1", "Ag 10, Cu 90").against(AG_CU).groups().get(0), "Cu");
        assertThat(copper.outcome().reason()).contains(Reason.NO_REPEAT_AND_NO_SIGMA);
        assertThat(copper.outcome().pValue()).isEmpty();
        assertThat(copper.outcome().randomUncertainty()).isEqualTo("not given");
    }

    @Test
    void two_particles_carry_both_scopes_and_are_marked_weak() {
        GroupFinding group = new InventedSpots().add("rim", "P1", "Ag 30, Cu 70").add("rim", "P1", "Ag 31, Cu 69")
            .add("rim", "P2", "Ag 29, Cu 71").add("rim", "P2", "Ag 30, Cu 70").against(AG_CU).groups().get(0);
        assertThat(group.weakTwoParticles()).isTrue();
        assertThat(group.caveats()).extracting(Caveat::code).doesNotContain("feature-not-stated", "particle-not-stated");
        assertThat(element(group, "Cu").theseParticles().orElseThrow().verdict()).isEqualTo(Verdict.ENRICHED);
        assertThat(group.caveats()).extracting(Caveat::code).contains("weak-two-particles");
    }

    @Test
    void an_element_that_no_spot_lists_is_dropped_from_data_and_nominal_and_never_depleted() {
        GroupFinding group = new InventedSpots().add("a", "P1", "Ag 60, Cu 40").add("a", "P2", "Ag 59, Cu 41")
            .add("a", "P3", "Ag 61, Cu 39")
            .against("Ag:56,Cu:37.3,Zn:6.7").groups().get(0);
        assertThat(group.notMeasured()).containsExactly(Element.of("Zn"));
        assertThat(group.elements()).extracting(ElementFinding::element).containsExactly(Element.of("Ag"), Element.of("Cu"));
        assertThat(element(group, "Ag").nominalLow()).isCloseTo(56 / 93.3, within(1e-12));
    }

    @Test
    void an_element_listed_by_a_later_spot_counts_below_its_limit_in_the_earlier_ones() {
        InventedSpots late = new InventedSpots().add("a", "P1", "Ag 60, Cu 40").add("a", "P2", "Ag 57, Cu 38, Zn 5")
            .add("a", "P3", "Ag 58, Cu 38, Zn 4");
        InventedSpots listed = new InventedSpots().add("a", "P1", "Ag 60, Cu 40, Zn n.d.").add("a", "P2", "Ag 57, Cu 38, Zn 5")
            .add("a", "P3", "Ag 58, Cu 38, Zn 4");
        GroupFinding group = late.against("Ag:56,Cu:38,Zn:6").groups().get(0);
        assertThat(element(group, "Zn").belowLimitCount()).isEqualTo(1);
        assertThat(element(group, "Zn").limitAssumed()).isTrue();
        assertThat(group.elements()).isEqualTo(listed.against("Ag:56,Cu:38,Zn:6").groups().get(0).elements());
    }

    @Test
    void a_mean_below_zero_stays_as_it_is_and_the_answer_says_why_its_interval_ends_before_it() {
        GroupFinding group = new InventedSpots().add("a", "P1", "Ag -1, Cu 101").add("a", "P1", "Ag -0.5, Cu 100.5")
            .add("a", "P1", "Ag 0, Cu 100")
            .against(AG_CU).groups().get(0);
        assertThat(element(group, "Ag").outcome().mean()).isCloseTo(-0.005, within(1e-12));
        assertThat(element(group, "Ag").outcome().low()).isZero();
        assertThat(group.caveats()).filteredOn(caveat -> caveat.code().equals("mean-beyond-range")).singleElement()
            .satisfies(caveat -> assertThat(caveat.detail())
            .startsWith("The mean of Ag lies below 0 at%, the mean of Cu lies above 100 at%: "));
    }

    @Test
    void an_element_below_its_limit_everywhere_gets_a_bound() {
        GroupFinding group = new InventedSpots().add("a", "P1", "Ag 60, Cu 40, Zn <0.3").add("a", "P2", "Ag 61, Cu 39, Zn <0.3")
            .add("a", "P3", "Ag 60.5, Cu 39.5, Zn <0.3").against("Ag:56,Cu:38,Zn:6").groups().get(0);
        Outcome zinc = element(group, "Zn").outcome();
        assertThat(zinc.verdict()).isEqualTo(Verdict.DEPLETED);
        assertThat(zinc.mean()).isZero();
        assertThat(zinc.high()).isCloseTo(0.003 / 1.003 * Math.exp(1.6448536269514722 * 0.125), within(1e-9));
    }

    @Test
    void an_element_allowed_up_to_a_limit_is_in_order_where_it_is_below_its_detection_limit_everywhere() {
        GroupFinding group = new InventedSpots().add("a", "P1", "Ag 60, Cu 40, Zn <0.3").add("a", "P2", "Ag 61, Cu 39, Zn <0.3")
            .against("Ag:60,Cu:bal,Zn:0-1.5").groups().get(0);
        assertThat(element(group, "Zn").outcome().verdict()).isEqualTo(Verdict.CONSISTENT);
        GroupFinding tight = new InventedSpots().add("a", "P1", "Ag 60, Cu 40, Zn <0.3").add("a", "P2", "Ag 61, Cu 39, Zn <0.3")
            .against("Ag:60,Cu:bal,Zn:0-0.1").groups().get(0);
        assertThat(element(tight, "Zn").outcome().reason()).contains(Reason.LIMIT_ABOVE_NOMINAL);
    }

    @Test
    void zero_is_below_a_limit_unless_the_group_holds_negative_values() {
        InventedSpots zeros = new InventedSpots().add("a", "P1", "Ag 60, Cu 40, Zn 0").add("a", "P2", "Ag 58, Cu 38, Zn 4");
        assertThat(element(zeros.against("Ag:56,Cu:38,Zn:6").groups().get(0), "Zn").belowLimitCount()).isEqualTo(1);
        InventedSpots negatives = new InventedSpots().add("a", "P1", "Ag 60, Cu 40, Zn 0")
            .add("a", "P2", "Ag 62.1, Cu 38, Zn -0.1");
        assertThat(element(negatives.against("Ag:56,Cu:38,Zn:6").groups().get(0), "Zn").belowLimitCount()).isZero();
    }

    @Test
    void atomic_and_mass_percent_of_the_same_spots_agree() {
        InventedSpots atomic = patchesAndMatrix();
        Sample sample = sample(AG_CU, false, Judgement.DEFAULT);
        Interpretation expected = atomic.against(sample, GroupBy.FEATURE);
        Interpretation found = new Interpreter().interpret(sample, sample.nominal().orElseThrow(),
            SpotSource.of(InventedSpots.inMassPercent(atomic.list())), GroupBy.FEATURE, 0.003);
        for (int g = 0; g < expected.groups().size(); g++) {
            for (int i = 0; i < 2; i++) {
                Outcome a = expected.groups().get(g).elements().get(i).outcome();
                Outcome b = found.groups().get(g).elements().get(i).outcome();
                assertThat(b.mean()).isCloseTo(a.mean(), within(1e-12));
                assertThat(b.low()).isCloseTo(a.low(), within(1e-12));
                assertThat(b.high()).isCloseTo(a.high(), within(1e-12));
                assertThat(b.pValue().orElseThrow()).isCloseTo(a.pValue().orElseThrow(), within(1e-12));
            }
        }
    }

    @Test
    void beam_energies_are_never_mixed_in_a_group() {
        InventedSpots spots = new InventedSpots().beam(5).add("rim", "P1", "Ag 30, Cu 70").beam(15)
            .add("rim", "P1", "Ag 50, Cu 50");
        assertThat(spots.against(AG_CU).groups()).extracting(GroupFinding::name).containsExactly("rim @ 5 keV", "rim @ 15 keV");
    }

    @Test
    void two_sessions_are_two_groups_and_three_are_the_unit_that_repeats() {
        InventedSpots two = new InventedSpots().add("rim", "P1", "Ag 30, Cu 70").session("s2").add("rim", "P2", "Ag 31, Cu 69");
        assertThat(two.against(AG_CU).groups()).extracting(GroupFinding::name)
            .containsExactly("rim, session s1", "rim, session s2");
        GroupFinding three = two.session("s3").add("rim", "P3", "Ag 29, Cu 71").add("rim", "P4", "Ag 30, Cu 70")
            .against(AG_CU).groups().get(0);
        assertThat(three.name()).isEqualTo("rim");
        assertThat(element(three, "Cu").outcome().degreesOfFreedom()).hasValue(2);
        assertThat(element(three, "Cu").outcome().mean()).isCloseTo((0.70 + 0.69 + 0.705) / 3, within(1e-12));
        assertThat(three.caveats()).extracting(Caveat::code).contains("sessions-are-units");
    }

    @Test
    void particles_can_be_asked_one_by_one() {
        Interpretation byParticle = patchesAndMatrix().against(AG_CU, GroupBy.PARTICLE);
        assertThat(byParticle.groups()).extracting(GroupFinding::name).containsExactly("P1", "P2", "P3");
        assertThat(byParticle.groups()).extracting(GroupFinding::scope).containsOnly(Scope.THIS_PARTICLE);
        assertThat(byParticle.contrasts()).isEmpty();
    }

    @Test
    void excluded_elements_leave_data_and_nominal_before_closing() {
        Sample plain = sample("Ag:50,Cu:40,O:10", false, Judgement.DEFAULT);
        Sample excluding = new Sample(plain.alloy(), plain.nominal(), Set.of(Element.of("O")), plain.accuracyClass(), plain.form(),
            plain.geometry(), plain.coating(), plain.mount(), plain.judgement(), plain.preparation(), plain.diffractionPhases(),
            "", false);
        GroupFinding group = new InventedSpots().add("a", "P1", "Ag 45, Cu 35, O 20").against(excluding, GroupBy.FEATURE).groups()
            .get(0);
        assertThat(group.elements()).extracting(ElementFinding::element).containsExactly(Element.of("Ag"), Element.of("Cu"));
        assertThat(element(group, "Ag").outcome().mean()).isCloseTo(45 / 80.0, within(1e-12));
        assertThat(element(group, "Ag").nominalLow()).isCloseTo(5 / 9.0, within(1e-12));
        assertThat(group.foreign()).isEmpty();
    }

    @Test
    void a_foreign_element_is_kept_shown_and_in_no_row() {
        GroupFinding group = new InventedSpots().add("a", "P1", "Ag 57, Cu 37, Fe 6").add("a", "P2", "Ag 56, Cu 38, Fe 6")
            .add("a", "P3", "Ag 57, Cu 37.5, Fe 5.5").against(AG_CU).groups().get(0);
        ForeignElement iron = group.foreign().get(0);
        assertThat(iron.element()).isEqualTo(Element.of("Fe"));
        assertThat(iron.mean()).isCloseTo((0.06 + 0.06 + 0.055) / 3, within(1e-12));
        assertThat(iron.present()).isTrue();
        assertThat(group.elements()).hasSize(2);
        assertThat(group.caveats()).filteredOn(caveat -> caveat.weight() == Caveat.Weight.WARNING).extracting(Caveat::code)
            .containsExactly("foreign-element");
    }

    @Test
    void the_median_of_a_particle_resists_one_wild_spot() {
        InventedSpots spots = new InventedSpots();
        for (String particle : List.of("P1", "P2", "P3")) {
            spots.add("a", particle, "Ag 60, Cu 40").add("a", particle, "Ag 61, Cu 39").add("a", particle, "Ag 5, Cu 95");
        }
        Sample median = sample(AG_CU, false, new Judgement(1.25, 0.05, 1, 0.9, SpotCentre.MEDIAN));
        assertThat(element(spots.against(median, GroupBy.FEATURE).groups().get(0), "Ag").outcome().mean())
            .isCloseTo(0.60, within(1e-12));
    }

    @Test
    void standards_and_agreeing_particles_can_show_that_nothing_changed() {
        InventedSpots spots = new InventedSpots();
        for (String particle : List.of("A1", "A2", "A3", "A4")) {
            spots.add("section", particle, "Al 87.7, Si 12.3").add("section", particle, "Al 87.9, Si 12.1")
                .add("section", particle, "Al 87.8, Si 12.2");
        }
        Sample plain = sample("Al:87.8,Si:12.2", false, Judgement.DEFAULT);
        Sample withStandards = new Sample(plain.alloy(), plain.nominal(), Set.of(), AccuracyClass.STANDARDS_BASED, Form.POLISHED,
            plain.geometry(), plain.coating(), plain.mount(), plain.judgement(), plain.preparation(), plain.diffractionPhases(),
            "", false);
        ElementFinding silicon = element(spots.against(withStandards, GroupBy.FEATURE).groups().get(0), "Si");
        assertThat(silicon.outcome().verdict()).isEqualTo(Verdict.CONSISTENT);
        assertThat(silicon.outcome().confidence().orElseThrow()).isGreaterThan(0.95);
        assertThat(silicon.nextStep()).isEmpty();
    }

    @Test
    void nothing_to_compare_is_refused() {
        InventedSpots silverOnly = new InventedSpots().add("a", "P1", "Ag 100");
        assertThatThrownBy(() -> silverOnly.against(AG_CU)).isInstanceOf(CompositionException.class)
            .hasMessageContaining("at least two elements of the nominal");
        assertThat(new InventedSpots().against(AG_CU).groups()).isEmpty();
    }

    @Test
    void a_nominal_that_misses_one_hundred_a_little_is_closed_and_says_so() {
        Interpretation closed = new InventedSpots().add("a", "P1", "Ag 60, Cu 40").against("Ag:60.1,Cu:40.3");
        assertThat(closed.caveats()).extracting(Caveat::code).contains("nominal-closed");
    }

    @Test
    void spots_screened_one_by_one_share_one_adjustment() {
        InventedSpots spots = patchesAndMatrix();
        Sample sample = sample(AG_CU, false, Judgement.DEFAULT);
        SpotSource source = SpotSource.of(spots.list());
        SpotScreening screening = new SpotScreening(sample, sample.nominal().orElseThrow(), source, 0.003);
        int[] enriched = {0};
        screening.forEach(source, reading -> {
            assertThat(reading.elements()).hasSize(2);
            assertThat(reading.group()).isIn("patch", "matrix");
            enriched[0] += reading.shows(Optional.of(Verdict.ENRICHED)) ? 1 : 0;
        });
        assertThat(enriched[0]).isEqualTo(6);
    }

    private static Sample sample(String nominal, boolean independent, Judgement judgement) {
        Sample plain = Sample.of(Optional.empty(), Optional.of(NominalText.parse(nominal, Basis.ATOMIC)));
        return new Sample(plain.alloy(), plain.nominal(), Set.of(), plain.accuracyClass(), plain.form(), plain.geometry(),
            plain.coating(),
            plain.mount(), judgement, List.of(), List.of(), "", independent);
    }
}
