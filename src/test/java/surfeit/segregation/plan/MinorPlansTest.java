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
import surfeit.spot.AccuracyClass;
import surfeit.spot.Judgement;
import surfeit.spot.SpotCentre;

/** Plans for little of an element, where answers take the wider of two intervals. */
class MinorPlansTest {
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
    void enrichment_is_shown_as_often_as_in_simulated_samples(String alloy, double odds, AccuracyClass accuracy,
            double between, double within, int particles, int tests, double flagged, double tolerance) {
        Nominal nominal = NominalText.parse(alloy, Basis.ATOMIC);
        PlanGoal goal = PlanGoal.of(Element.of("Cu"), WantedShift.oddsRatio(odds)).withParticles(particles)
            .withSpotsPerParticle(3).withTests(tests);
        MeasurementPlan plan = new Planner().plan(goal, Answers.sample(nominal, accuracy, "", USUAL), nominal,
            ParticleScatter.ofLogOdds(between, within));
        assertThat(plan.given().orElseThrow().power().orElseThrow()).isCloseTo(flagged, within(tolerance));
    }
}
