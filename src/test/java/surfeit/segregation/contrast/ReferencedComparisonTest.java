package surfeit.segregation.contrast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static surfeit.spot.AccuracyClass.STANDARDLESS;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.element.Element;
import surfeit.segregation.Answers;
import surfeit.segregation.InventedTable;
import surfeit.segregation.SampleComparison;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.sums.Sums;
import surfeit.segregation.uncertainty.AdditiveFloor;
import surfeit.segregation.uncertainty.CalibrationError;
import surfeit.segregation.uncertainty.ReferenceCorrection;
import surfeit.segregation.uncertainty.SharedDifference;

/** Two samples of two sessions, each session with spots on a piece of known composition. All numbers invented. */
class ReferencedComparisonTest {
    private static final Nominal AG_CU = NominalText.parse("Ag:60.1,Cu:39.9", Basis.ATOMIC);

    private static InventedTable lot(String session, double offset) {
        InventedTable spots = InventedTable.inAtoms("Ag Cu").session(session);
        double[] shifts = {-0.4, 0.3, 0.1, -0.2, 0.2, 0.4};
        for (int i = 0; i < shifts.length; i++) {
            spots.row("P" + (i / 2), 60.1 + offset + shifts[i], 39.9 - offset - shifts[i]);
        }
        return spots;
    }

    private static InventedTable withPiece(InventedTable spots, double offset) {
        spots.onReference(AG_CU, false);
        for (double shift : new double[] {-0.3, 0.2, 0.3, -0.1, -0.1}) {
            spots.row("", 60.1 + offset + shift, 39.9 - offset - shift);
        }
        return spots;
    }

    private static FeatureComparison compare(InventedTable a, InventedTable b) {
        ComparisonAnswer answer = new SampleComparison().compare(
            new ComparedSample("lot 7", Answers.sample(AG_CU, STANDARDLESS, ""), AG_CU, List.of(), a.source()),
            new ComparedSample("lot 8", Answers.sample(AG_CU, STANDARDLESS, ""), AG_CU, List.of(), b.source()),
            GroupBy.FEATURE, false, Answers.LIMIT);
        return answer.features().get(0);
    }

    @Test
    void two_sessions_with_a_piece_each_show_two_lots_to_be_alike() {
        assertThat(compare(lot("s1", -5), lot("s2", -5)).state()).isEqualTo(FeatureComparison.State.UNDECIDED);
        FeatureComparison both = compare(withPiece(lot("s1", -5), -5), withPiece(lot("s2", 3), 3));
        assertThat(both.contrast().orElseThrow().note().orElseThrow()).contains("each corrected by its own");
        Contrast.ElementContrast silver = both.contrast().orElseThrow().elements().get(0);
        assertThat(silver.meanA()).isCloseTo(0.6015, within(1e-3));
        assertThat(silver.meanB()).isCloseTo(0.6015, within(1e-3));
        assertThat(silver.uncertaintyShared()).as("0.1768 each, times the root of 0.2, and of 2 for both")
            .isCloseTo(0.1768 * Math.sqrt(0.2) * Math.sqrt(2), within(1e-3));
    }

    @Test
    void a_piece_in_one_session_alone_corrects_neither() {
        Contrast contrast = compare(withPiece(lot("s1", -5), -5), lot("s2", -5)).contrast().orElseThrow();
        assertThat(contrast.note()).contains("Different sessions: the calibration error does not cancel.");
        assertThat(contrast.elements().get(0).meanA()).isCloseTo(0.5517, within(1e-3));
    }

    @Test
    void within_one_session_the_numbers_are_as_measured_and_the_error_cancels() {
        InventedTable lot = withPiece(lot("s1", -5), -5);
        Contrast contrast = compare(lot, lot).contrast().orElseThrow();
        assertThat(contrast.correlation()).isEqualTo(0.9);
        assertThat(contrast.elements().get(0).meanA()).isCloseTo(0.5517, within(1e-3));
    }

    /**
     * Simulated lots of two sessions, standardless (0.125 an element), correlation of sample and piece as assumed: the
     * 95 % interval of the odds ratio covers the true one as often as it says. 3000 draws, fixed seed: noise 0.4 points.
     */
    @ParameterizedTest
    @CsvSource({"0.6, 0.5, 4, 5", "0.9, 0.93, 3, 3"})
    void the_interval_covers_as_often_as_it_says(double trueA, double trueB, int particles, int pieceSpots) {
        Random random = new Random(20_261L + particles);
        int draws = 3000;
        int covered = 0;
        for (int draw = 0; draw < draws; draw++) {
            ContrastTest test = draw(random, trueA, trueB, particles, pieceSpots);
            double error = test.theta() - (NominalTest.logit(trueA) - NominalTest.logit(trueB));
            covered += Math.abs(error) <= test.halfWidth() ? 1 : 0;
        }
        assertThat((double) covered / draws).isBetween(0.935, 0.972);
    }

    private static ContrastTest draw(Random random, double trueA, double trueB, int particles, int pieceSpots) {
        ContrastSide a = side(random, trueA, particles, pieceSpots);
        ContrastSide b = side(random, trueB, particles, pieceSpots);
        SharedDifference shared =
            SharedDifference.of(a.runs().mean(), a.calibration(), b.runs().mean(), b.calibration(), 0);
        return ContrastTest.of(new ContrastTest.Side(a.runs().first(), a.calibration().reference()),
            new ContrastTest.Side(b.runs().first(), b.calibration().reference()), 0, false, shared, Math.log(1.25));
    }

    private static ContrastSide side(Random random, double truth, int particles, int pieceSpots) {
        double[] ofSample = new double[2];
        double[] ofPiece = new double[2];
        for (int j = 0; j < 2; j++) {
            double common = random.nextGaussian();
            ofSample[j] = 0.125 * (Math.sqrt(0.9) * common + Math.sqrt(0.1) * random.nextGaussian());
            ofPiece[j] = 0.125 * (Math.sqrt(0.9) * common + Math.sqrt(0.1) * random.nextGaussian());
        }
        double[][] piece = new double[pieceSpots][];
        for (int q = 0; q < pieceSpots; q++) {
            piece[q] = measured(0.601, ofPiece, 0.04 * random.nextGaussian());
        }
        AdditiveFloor none = Sums.constantFloor(0, 2);
        ReferenceCorrection correction = ReferenceCorrection.of(piece, Optional.empty(), new double[] {0.601, 0.399},
            new double[2], 0.9, none, false).orElseThrow();
        List<double[][]> spots = new ArrayList<>();
        for (int p = 0; p < particles; p++) {
            double between = 0.06 * random.nextGaussian();
            double[][] own = new double[2][];
            for (int i = 0; i < 2; i++) {
                own[i] = correction.corrected(measured(truth, ofSample, between + 0.04 * random.nextGaussian()));
            }
            spots.add(own);
        }
        return new ContrastSide("side", List.of(Element.of("Ag"), Element.of("Cu")), Sums.runs(Sums.of(spots)), true,
            java.util.OptionalDouble.empty(), Optional.empty(), false,
            new CalibrationError(0.125, none, Optional.of(correction)));
    }

    private static double[] measured(double truth, double[] shared, double logOdds) {
        double odds = truth / (1 - truth) * Math.exp(shared[0] - shared[1] + logOdds);
        return new double[] {odds / (1 + odds), 1 / (1 + odds)};
    }
}
