package surfeit.segregation.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.element.Element;
import surfeit.segregation.Answers;
import surfeit.segregation.Answers;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Judgement;
import surfeit.spot.SpotCentre;

/** What plans promise against samples simulated outside. */
class SimulatedPlansTest {
    private static final Judgement USUAL = new Judgement(1.25, 0.05, 1, 0.9, SpotCentre.MEAN);

    /**
     * Flags among 200 000 samples drawn in Python (numpy, scipy) and judged by the rules as written in prose, no code
     * shared: invented scatter, both errors of the calibration normal. Answers judge a mean by the errors at that mean,
     * which grow with it. Noise 0.001.
     */
    @ParameterizedTest
    @CsvSource({
        "'Sn:98.7,Cu:1.3', 2.03, STANDARDLESS, 0.14, 0.05, 5, 1, 0.835, 0.02",
        "'Sn:98.7,Cu:1.3', 2.03, STANDARDS_BASED, 0.22, 0.15, 5, 1, 0.966, 0.02",
        "'Sn:98.7,Cu:1.3', 2.55, STANDARDS_BASED, 0.44, 0.26, 7, 1, 0.949, 0.05",
        "'Ag:99,Cu:1', 1.8, STANDARDS_BASED, 0.1, 0.1, 4, 3, 0.882, 0.02",
        "'Ag:99,Cu:1', 2.5, STANDARDLESS, 0.1, 0.1, 4, 1, 0.971, 0.02",
        "'Sn:99.5,Cu:0.5', 4, STANDARDLESS, 0.1, 0.1, 4, 1, 0.998, 0.02"})
    void enrichment_of_a_minor_element_is_shown_as_often_as_promised(String alloy, double odds, AccuracyClass accuracy,
            double between, double within, int particles, int tests, double flagged, double tolerance) {
        Nominal nominal = NominalText.parse(alloy, Basis.ATOMIC);
        PlanGoal goal = PlanGoal.of(Element.of("Cu"), WantedShift.oddsRatio(odds)).withParticles(particles)
            .withSpotsPerParticle(3).withTests(tests);
        MeasurementPlan plan = new Planner().plan(goal, Answers.sample(nominal, accuracy, "", USUAL), nominal,
            ParticleScatter.ofLogOdds(between, within));
        assertThat(plan.given().orElseThrow().power().orElseThrow()).isCloseTo(flagged, within(tolerance));
    }

    /**
     * Flags among 200 000 samples drawn in Python (numpy, scipy) with five spots on a reference piece that scatter by
     * 0.005, judged by the rules as written in prose, no code shared. Beside spots that scatter by 0.1, as those on the
     * particles do, 0.930, 0.638, 0.839 and 0.870 show it: their error is told with more degrees of freedom. Noise 0.001.
     */
    @ParameterizedTest
    @CsvSource({"1.6, 3, 1, 0.897", "1.6, 3, 6, 0.350", "2.0, 3, 6, 0.595", "1.6, 4, 6, 0.798"})
    void a_quiet_reference_piece_keeps_the_promise_too(double odds, int particles, int tests, double flagged) {
        Nominal nominal = NominalText.parse("Ag:60.1,Cu:39.9", Basis.ATOMIC);
        PlanGoal goal = PlanGoal.of(Element.of("Cu"), WantedShift.oddsRatio(odds)).withParticles(particles)
            .withSpotsPerParticle(3).withReferenceSpots(5).withTests(tests);
        MeasurementPlan plan = new Planner().plan(goal, Answers.sample(nominal, AccuracyClass.STANDARDLESS, "", USUAL),
            nominal, ParticleScatter.ofLogOdds(0.1, 0.1));
        assertThat(plan.given().orElseThrow().power().orElseThrow()).isCloseTo(flagged, within(0.01));
    }
}
