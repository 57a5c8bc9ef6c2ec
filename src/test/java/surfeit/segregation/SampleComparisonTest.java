package surfeit.segregation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static surfeit.spot.AccuracyClass.STANDARDLESS;
import static surfeit.spot.AccuracyClass.STANDARDS_BASED;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.element.Element;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Scope;
import surfeit.segregation.contrast.ComparedSample;
import surfeit.segregation.contrast.ComparisonAnswer;
import surfeit.segregation.contrast.FeatureComparison;
import surfeit.segregation.contrast.FeatureComparison.State;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Judgement;
import surfeit.spot.SpotCentre;

/** Two samples against each other, through the public entry: an Ag-Cu powder as made and etched. All invented. */
class SampleComparisonTest {
    private static final Nominal AG_CU = NominalText.parse("Ag:60.1,Cu:39.9", Basis.ATOMIC);

    /** Four particles around this much silver, two spots each, with a steady scatter of a few tenths. */
    private static InventedTable add(InventedTable spots, String feature, double silver) {
        double[] shifts = {-0.5, -0.1, 0.1, 0.5, -0.3, 0.2, 0.4, -0.2};
        for (int i = 0; i < shifts.length; i++) {
            spots.feature(feature).row("P" + (i / 2 + 1), silver + shifts[i], 100 - silver - shifts[i]);
        }
        return spots;
    }

    private static InventedTable agCu() {
        return InventedTable.inAtoms("Ag Cu");
    }

    private static ComparedSample sample(String name, AccuracyClass accuracy, Nominal nominal, InventedTable spots) {
        return new ComparedSample(name, Answers.sample(nominal, accuracy, ""), nominal, List.of(), spots.source());
    }

    private static ComparisonAnswer compare(ComparedSample a, ComparedSample b) {
        return new SampleComparison().compare(a, b, GroupBy.FEATURE, false, Answers.LIMIT);
    }

    private static ComparisonAnswer compare(InventedTable made, InventedTable etched) {
        return compare(sample("as made", STANDARDLESS, AG_CU, made), sample("etched", STANDARDLESS, AG_CU, etched));
    }

    private static FeatureComparison feature(ComparisonAnswer answer, String name) {
        return answer.features().stream().filter(feature -> feature.feature().equals(name)).findFirst().orElseThrow();
    }

    private static List<String> codes(ComparisonAnswer answer) {
        return answer.caveats().stream().map(Caveat::code).toList();
    }

    @Test
    void features_are_changed_unchanged_gone_and_appeared() {
        InventedTable made = add(add(add(agCu(), "dark patch", 22), "matrix", 68), "rim", 45);
        InventedTable etched = add(add(add(agCu(), "dark patch", 35), "matrix", 68.1), "pit", 80);
        ComparisonAnswer answer = compare(made, etched);
        assertThat(answer.features()).extracting(FeatureComparison::feature)
            .containsExactly("dark patch", "matrix", "rim", "pit");
        assertThat(answer.features()).extracting(FeatureComparison::state)
            .containsExactly(State.CHANGED, State.UNCHANGED, State.GONE, State.APPEARED);
        FeatureComparison patch = feature(answer, "dark patch");
        assertThat(patch.elementsThatAre(Contrast.Word.LOWER)).containsExactly(Element.of("Ag"));
        assertThat(patch.elementsThatAre(Contrast.Word.HIGHER)).containsExactly(Element.of("Cu"));
        assertThat(patch.nextStep()).isEmpty();
        assertThat(feature(answer, "matrix").elementsThatAre(Contrast.Word.EQUIVALENT)).hasSize(2);
        assertThat(feature(answer, "rim").a()).isPresent();
        assertThat(feature(answer, "rim").b()).isEmpty();
        assertThat(feature(answer, "pit").contrast()).isEmpty();
    }

    @Test
    void a_against_b_carries_both_names_and_the_odds_ratio_of_a_over_b() {
        ComparisonAnswer answer = compare(add(agCu(), "matrix", 60), add(agCu(), "matrix", 50));
        Contrast contrast = feature(answer, "matrix").contrast().orElseThrow();
        assertThat(contrast.groupA()).isEqualTo("as made");
        assertThat(contrast.groupB()).isEqualTo("etched");
        Contrast.ElementContrast silver = contrast.elements().get(0);
        double a = 0.600125;
        double b = 0.500125;
        assertThat(silver.oddsRatio().orElseThrow().value()).isCloseTo(a / (1 - a) / (b / (1 - b)), within(1e-9));
        assertThat(silver.difference().value()).isCloseTo(a - b, within(1e-12));
        assertThat(silver.verdict()).isEqualTo(Contrast.Word.HIGHER);
    }

    /** Each side's own answer stands beside the contrast, with its factor against its own nominal. */
    @Test
    void each_side_keeps_its_answer_against_its_own_nominal() {
        Nominal richer = NominalText.parse("Ag:72,Cu:28", Basis.ATOMIC);
        ComparisonAnswer answer = compare(sample("lot 7", STANDARDLESS, AG_CU, add(agCu(), "matrix", 60)),
            sample("lot 8", STANDARDLESS, richer, add(agCu(), "matrix", 60)));
        FeatureComparison matrix = feature(answer, "matrix");
        assertThat(matrix.state()).as("nominals play no part").isEqualTo(State.UNCHANGED);
        assertThat(factor(matrix.a())).isCloseTo(0.600125 / 0.601, within(1e-9));
        assertThat(factor(matrix.b())).isCloseTo(0.600125 / 0.72, within(1e-9));
        Interpretation alone = Answers.of(AG_CU, STANDARDLESS, "", add(agCu(), "matrix", 60));
        assertThat(Answers.outcome(answer.a().groups().get(0), "Ag")).isEqualTo(Answers.outcome(Answers.only(alone), "Ag"));
    }

    private static double factor(Optional<GroupFinding> group) {
        return Answers.outcome(group.orElseThrow(), "Ag").enrichmentFactor().orElseThrow().value();
    }

    /** Same error each, r = 0.125 a element: u of the logit difference is sqrt(2 (1 - rho)) or sqrt 2 times 0.1768. */
    @Test
    void in_one_session_most_of_the_calibration_error_cancels_and_in_two_none_does() {
        InventedTable made = add(agCu(), "matrix", 60);
        Contrast together = feature(compare(made, add(agCu(), "matrix", 60)), "matrix").contrast().orElseThrow();
        ComparisonAnswer apart = compare(made, add(agCu().session("s2"), "matrix", 60));
        Contrast contrast = feature(apart, "matrix").contrast().orElseThrow();
        assertThat(together.correlation()).isEqualTo(0.9);
        assertThat(together.note()).isEmpty();
        assertThat(contrast.correlation()).isZero();
        assertThat(contrast.note()).contains("Different sessions: the calibration error does not cancel.");
        assertThat(together.elements().get(0).uncertaintyShared()).isCloseTo(0.17678 * Math.sqrt(0.2), within(1e-4));
        assertThat(contrast.elements().get(0).uncertaintyShared()).isCloseTo(0.17678 * Math.sqrt(2), within(1e-4));
        assertThat(feature(apart, "matrix").state()).isEqualTo(State.UNDECIDED);
        assertThat(feature(apart, "matrix").nextStep()).contains("Measure as made and etched in one session at one "
            + "beam energy, or five spots of one reference piece in the session of each.");
        assertThat(codes(apart)).contains("calibration-does-not-cancel").doesNotContain("same-session");
    }

    @Test
    void sessions_without_a_name_are_no_common_session() {
        ComparisonAnswer answer = compare(add(agCu().session(""), "matrix", 60), add(agCu().session(""), "matrix", 60));
        Contrast contrast = feature(answer, "matrix").contrast().orElseThrow();
        assertThat(contrast.correlation()).isZero();
        assertThat(contrast.note().orElseThrow()).startsWith("No session is stated");
    }

    @Test
    void other_beam_energies_are_compared_with_a_warning_word() {
        Contrast contrast = feature(compare(add(agCu().atKev(15), "matrix", 60), add(agCu().atKev(20), "matrix", 60)),
            "matrix").contrast().orElseThrow();
        assertThat(contrast.correlation()).isZero();
        assertThat(contrast.note().orElseThrow()).startsWith("Different beam energies: other lines, other depth");
    }

    @Test
    void of_several_beam_energies_the_same_one_is_compared_and_the_other_named() {
        InventedTable made = add(add(agCu().atKev(5), "matrix", 60).atKev(15), "matrix", 60);
        ComparisonAnswer answer = compare(made, add(agCu().atKev(15), "matrix", 60));
        assertThat(answer.features()).singleElement().satisfies(only -> {
            assertThat(only.feature()).isEqualTo("matrix");
            assertThat(only.a().orElseThrow().name()).isEqualTo("matrix @ 15 keV");
            assertThat(only.contrast().orElseThrow().correlation()).isEqualTo(0.9);
        });
        assertThat(answer.caveats()).anySatisfy(caveat -> {
            assertThat(caveat.code()).isEqualTo("no-counterpart");
            assertThat(caveat.detail()).contains("\"matrix @ 5 keV\" of as made");
        });
    }

    @Test
    void of_two_sessions_the_common_one_is_compared_and_the_other_all_the_same() {
        InventedTable made = add(add(agCu().session("s1"), "matrix", 60).session("s2"), "matrix", 60);
        ComparisonAnswer answer = compare(made, add(agCu().session("s2"), "matrix", 60));
        assertThat(answer.features()).hasSize(2).allMatch(feature -> feature.contrast().isPresent());
        assertThat(answer.features().get(0).contrast().orElseThrow().correlation()).isZero();
        assertThat(answer.features().get(1).contrast().orElseThrow().correlation()).isEqualTo(0.9);
        assertThat(answer.features().get(1).a().orElseThrow().name()).isEqualTo("matrix, session s2");
    }

    @Test
    void equal_particle_names_are_not_pairs_unless_the_lab_says_so() {
        ComparedSample made = sample("as made", STANDARDLESS, AG_CU, add(agCu(), "matrix", 60));
        ComparedSample etched = sample("etched", STANDARDLESS, AG_CU, add(agCu(), "matrix", 58));
        ComparisonAnswer apart = compare(made, etched);
        assertThat(feature(apart, "matrix").contrast().orElseThrow().paired()).isFalse();
        assertThat(codes(apart)).contains("particle-names-coincide");
        ComparisonAnswer again = new SampleComparison().compare(made, etched, GroupBy.FEATURE, true, Answers.LIMIT);
        Contrast pairs = feature(again, "matrix").contrast().orElseThrow();
        assertThat(pairs.paired()).isTrue();
        assertThat(pairs.commonParticles()).containsExactly("P1", "P2", "P3", "P4");
        assertThat(pairs.elements().get(0).degreesOfFreedom()).hasValue(3);
        assertThat(codes(again)).contains("same-particles").doesNotContain("particle-names-coincide");
    }

    @Test
    void particle_by_particle_needs_the_same_particles() {
        ComparedSample made = sample("as made", STANDARDLESS, AG_CU, add(agCu(), "matrix", 60));
        ComparedSample etched = sample("etched", STANDARDLESS, AG_CU, add(agCu(), "matrix", 30));
        assertThatThrownBy(() -> new SampleComparison().compare(made, etched, GroupBy.PARTICLE, false, Answers.LIMIT))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("very same ones");
        ComparisonAnswer answer = new SampleComparison().compare(made, etched, GroupBy.PARTICLE, true, Answers.LIMIT);
        assertThat(answer.features()).hasSize(4).allSatisfy(particle ->
            assertThat(particle.contrast().orElseThrow().scope()).isEqualTo(Scope.THESE_PARTICLES));
    }

    @Test
    void other_nominals_are_closed_over_what_they_share_and_the_rest_is_named() {
        Nominal withTin = NominalText.parse("Cu:38,Ag:57,Sn:5", Basis.ATOMIC);
        InventedTable tin = InventedTable.inAtoms("Ag Cu Sn");
        for (String particle : List.of("P1", "P2", "P3", "P4")) {
            tin.feature("matrix").row(particle, "57.3 37.7 5.0").row(particle, "56.7 38.3 5.0");
        }
        ComparisonAnswer answer = compare(sample("plain", STANDARDS_BASED, AG_CU, add(agCu(), "matrix", 60)),
            sample("with tin", STANDARDS_BASED, withTin, tin));
        assertThat(answer.elements()).extracting(Element::symbol).containsExactly("Ag", "Cu");
        assertThat(answer.onlyInA()).isEmpty();
        assertThat(answer.onlyInB()).extracting(Element::symbol).containsExactly("Sn");
        Contrast.ElementContrast silver = feature(answer, "matrix").contrast().orElseThrow().elements().get(0);
        assertThat(silver.meanB()).isCloseTo(0.6, within(1e-3));
        assertThat(silver.verdict()).isEqualTo(Contrast.Word.EQUIVALENT);
        assertThat(answer.caveats()).anySatisfy(caveat -> assertThat(caveat.detail())
            .contains("left out: Sn (only in the nominal of with tin)"));
        assertThat(feature(answer, "matrix").b().orElseThrow().elements()).as("its own answer has all three").hasSize(3);
    }

    @Test
    void nominals_with_one_common_element_are_refused() {
        Nominal tinBismuth = NominalText.parse("Ag:3,Bi:97", Basis.ATOMIC);
        assertThatThrownBy(() -> compare(sample("a", STANDARDLESS, AG_CU, add(agCu(), "matrix", 60)),
            sample("b", STANDARDLESS, tinBismuth, InventedTable.inAtoms("Ag Bi").row("P1", "3 97"))))
            .isInstanceOfSatisfying(CompositionException.class, refusal -> {
                assertThat(refusal.kind()).isEqualTo(CompositionException.Kind.TOO_FEW_ELEMENTS);
                assertThat(refusal.getMessage()).contains("[Ag, Cu] for a and [Ag, Bi] for b");
            });
    }

    @Test
    void a_feature_that_cannot_be_compared_is_neither_gone_nor_appeared() {
        InventedTable silverOnly = add(agCu(), "matrix", 60);
        silverOnly.feature("vein").row("P1", "99.0 -").row("P2", "98.0 -");
        ComparisonAnswer answer = compare(add(add(agCu(), "matrix", 60), "vein", 90), silverOnly);
        assertThat(feature(answer, "vein").state()).isEqualTo(State.NOT_COMPARED);
        assertThat(feature(compare(silverOnly, add(add(agCu(), "matrix", 60), "vein", 90)), "vein").state())
            .isEqualTo(State.NOT_COMPARED);
    }

    /** Wilson's interval for 0 of 4: up to z^2 / (4 + z^2) = 0.490. */
    @Test
    void what_is_gone_is_bounded_by_how_many_particles_were_looked_at() {
        ComparisonAnswer answer = compare(add(add(agCu(), "matrix", 60), "rim", 45), add(agCu(), "matrix", 60));
        FeatureComparison rim = feature(answer, "rim");
        assertThat(rim.seenInA().orElseThrow().particles()).isEqualTo(4);
        assertThat(rim.seenInA().orElseThrow().of()).isEqualTo(4);
        assertThat(rim.seenInB().orElseThrow().particles()).isZero();
        assertThat(rim.seenInB().orElseThrow().shareHigh()).isCloseTo(3.8415 / (4 + 3.8415), within(1e-4));
    }

    @Test
    void spots_without_a_feature_may_hide_what_looks_gone() {
        ComparisonAnswer answer = compare(add(agCu(), "rim", 45), agCu().unlabelled().row("P1", 45, 55).row("P2", 46, 54));
        assertThat(feature(answer, "rim").state()).isEqualTo(State.GONE);
        assertThat(answer.caveats()).anySatisfy(caveat -> {
            assertThat(caveat.code()).isEqualTo("unlabelled-spots");
            assertThat(caveat.weight()).isEqualTo(Caveat.Weight.WARNING);
        });
    }

    @Test
    void a_sample_without_spots_is_warned_of() {
        ComparisonAnswer answer = compare(add(agCu(), "rim", 45), agCu());
        assertThat(answer.caveats()).anySatisfy(caveat -> {
            assertThat(caveat.code()).isEqualTo("no-spots");
            assertThat(caveat.detail()).startsWith("etched has no spots");
        });
        assertThat(feature(answer, "rim").seenInB()).as("no particle was looked at").isEmpty();
    }

    @Test
    void an_etch_product_is_told_as_found_in_one_only() {
        InventedTable etched = InventedTable.inAtoms("Ag Cu O Cl");
        for (String particle : List.of("P1", "P2", "P3")) {
            etched.feature("matrix").row(particle, "57.0 38.0 2.0 3.0").row(particle, "56.8 38.1 2.1 3.0");
        }
        InventedTable made = InventedTable.inAtoms("Ag Cu O");
        for (String particle : List.of("P1", "P2", "P3")) {
            made.feature("matrix").row(particle, "58.8 39.2 2.0").row(particle, "58.6 39.3 2.1");
        }
        FeatureComparison matrix = feature(compare(made, etched), "matrix");
        assertThat(matrix.foreignOnlyInA()).isEmpty();
        assertThat(matrix.foreignOnlyInB()).extracting(found -> found.element().symbol()).containsExactly("Cl");
    }

    @Test
    void the_stricter_margin_and_risk_count_and_that_is_said() {
        Judgement wide = new Judgement(2, 0.1, 1, 0.9, SpotCentre.MEAN);
        ComparedSample a = new ComparedSample("a", Answers.sample(AG_CU, STANDARDLESS, "", wide), AG_CU, List.of(),
            add(agCu(), "matrix", 60).source());
        ComparisonAnswer answer = compare(a, sample("b", STANDARDS_BASED, AG_CU, add(agCu(), "matrix", 60)));
        assertThat(answer.marginOddsRatio()).isEqualTo(1.25);
        assertThat(answer.alpha()).isEqualTo(0.05);
        assertThat(codes(answer)).contains("stricter-settings", "accuracy-differs");
        assertThat(feature(answer, "matrix").contrast().orElseThrow().note().orElseThrow())
            .startsWith("Quantified in different ways");
    }

    @Test
    void all_features_are_one_family_and_a_binary_is_one_test() {
        InventedTable made = add(add(add(agCu(), "x", 60), "y", 60), "z", 60);
        InventedTable etched = add(add(add(agCu(), "x", 57), "y", 60), "z", 60);
        Contrast contrast = feature(compare(made, etched), "x").contrast().orElseThrow();
        List<Contrast.ElementContrast> elements = contrast.elements();
        double larger = Math.max(elements.get(0).pValue().orElseThrow(), elements.get(1).pValue().orElseThrow());
        assertThat(elements.get(0).pAdjusted().orElseThrow()).isCloseTo(3 * larger, within(1e-12));
        assertThat(elements.get(1).pAdjusted()).isEqualTo(elements.get(0).pAdjusted());
    }

    @Test
    void which_element_alone_could_have_changed_is_told() {
        Nominal solder = NominalText.parse("Sn:90,Ag:6,Cu:4", Basis.ATOMIC);
        InventedTable made = InventedTable.inAtoms("Sn Ag Cu");
        InventedTable aged = InventedTable.inAtoms("Sn Ag Cu");
        double[] shifts = {-0.06, 0.05, 0.02, -0.04, 0.03, -0.02};
        for (int i = 0; i < shifts.length; i++) {
            String particle = "P" + (i / 2 + 1);
            made.feature("matrix").row(particle, 90 - shifts[i], 6 + shifts[i], 4);
            aged.feature("matrix").row(particle, 50 - shifts[i], 6 + shifts[i], 4);
        }
        FeatureComparison matrix = feature(compare(sample("new", STANDARDS_BASED, solder, made),
            sample("aged", STANDARDS_BASED, solder, aged)), "matrix");
        assertThat(matrix.elementsThatAre(Contrast.Word.LOWER)).extracting(Element::symbol).containsExactly("Ag", "Cu");
        assertThat(matrix.explanationSet()).contains(List.of(Element.of("Sn")));
    }

    @Test
    void one_particle_a_side_speaks_for_these_particles() {
        ComparisonAnswer answer = compare(agCu().row("P1", "60.1 39.9").row("P1", "60.4 39.6").row("P1", "59.9 40.1"),
            agCu().row("Q1", "50.2 49.8").row("Q1", "50.4 49.6").row("Q1", "49.9 50.1"));
        Contrast contrast = feature(answer, "surface").contrast().orElseThrow();
        assertThat(contrast.scope()).isEqualTo(Scope.THESE_PARTICLES);
        assertThat(contrast.elements().get(0).verdict()).isEqualTo(Contrast.Word.HIGHER);
    }

    @Test
    void a_single_spot_without_uncertainty_settles_nothing_and_says_what_to_do() {
        ComparisonAnswer answer = compare(agCu().row("P1", "60.1 39.9"), agCu().row("Q1", "30.2 69.8"));
        FeatureComparison surface = feature(answer, "surface");
        assertThat(surface.state()).isEqualTo(State.UNDECIDED);
        assertThat(surface.contrast().orElseThrow().elements().get(0).reason()).contains(Reason.NO_REPEAT_AND_NO_SIGMA);
        assertThat(surface.nextStep().orElseThrow()).contains("two more spots");
    }

    @Test
    void by_sample_everything_is_one_group() {
        ComparedSample made = sample("as made", STANDARDLESS, AG_CU, add(add(agCu(), "x", 60), "y", 62));
        ComparedSample etched = sample("etched", STANDARDLESS, AG_CU, add(agCu(), "z", 40));
        ComparisonAnswer answer = new SampleComparison().compare(made, etched, GroupBy.SAMPLE, false, Answers.LIMIT);
        assertThat(answer.features()).extracting(FeatureComparison::state).containsExactly(State.CHANGED);
        assertThat(answer.features().get(0).seenInA()).as("not a feature").isEmpty();
    }
}
