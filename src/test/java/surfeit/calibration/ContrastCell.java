package surfeit.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Spot;

/**
 * One feature of a sample against another: a dark patch against the matrix, invented.
 *
 * <p>The dark patch is moved from the matrix as the truth asks. A particle's own deviation is common to both features
 * where they share particles; each feature scatters about it. The calibration errors of the two correlate by
 * {@code actualRho}; the program takes 0.9 within a session and 0 between two. The interval of the odds ratio should
 * cover the true one.
 */
record ContrastCell(Label label, Set<Truth> truths, Design design, AccuracyClass accuracy, Composition matrix,
                    Workstation workstation) implements Cell {
    private static final Interpreter PROGRAM = new Interpreter();
    private static final int MOVED = 1;

    /** Which particles and sessions the two features come from. */
    enum Pairing { SAME_PARTICLES, OTHER_PARTICLES, OTHER_SESSION }

    /**
     * @param dark     particles with a dark patch
     * @param matrix   particles with matrix
     * @param particle relative scatter of particles, common to both features of one
     * @param feature  relative scatter of a feature about its particle
     * @param within   relative scatter of spots
     */
    record Design(Pairing pairing, int dark, int matrix, int spots, Scatter scatter, double particle, double feature,
                  double within, double actualRho) {
    }

    @Override
    public Answer draw(Truth kind, Dice dice) {
        double logOdds = kind.logOdds(Math.log(1.5), dice);
        Composition dark = matrix.shifted(MOVED, logOdds);
        RunError error = RunError.draw(matrix.size(), Scatter.NORMAL, dice);
        RunError other = error.correlated(design.actualRho, Scatter.NORMAL, dice);
        List<double[]> particles = new ArrayList<>();
        for (int p = 0; p < Math.max(design.dark, design.matrix); p++) {
            particles.add(Composition.draws(design.scatter, matrix.size(), dice));
        }
        List<Spot> spots = new ArrayList<>();
        feature("dark patch", dark, design.dark, particles, error, spots, dice);
        boolean shared = design.pairing == Pairing.SAME_PARTICLES;
        particles.replaceAll(own -> shared ? own : Composition.draws(design.scatter, matrix.size(), dice));
        feature("matrix", matrix, design.matrix, particles, other, spots, dice);
        Interpretation answer = PROGRAM.interpret(Calibration.of(accuracy).sample(matrix.nominal()), matrix.nominal(),
            SpotSource.of(spots), GroupBy.FEATURE, MethodSettings.DEFAULT_DETECTION_LIMIT_MASS_FRACTION);
        return new Answer(said(answer.contrasts().get(0), dark, matrix), MOVED, logOdds, matrix.size() == 2);
    }

    private void feature(String name, Composition composition, int count, List<double[]> particles, RunError error,
                         List<Spot> spots, Dice dice) {
        boolean first = name.equals("dark patch");
        boolean shared = design.pairing == Pairing.SAME_PARTICLES;
        Optional<String> session = design.pairing == Pairing.OTHER_SESSION
            ? Optional.of(first ? "monday" : "tuesday") : Optional.empty();
        for (int p = 0; p < count; p++) {
            double[] own = particles.get(p);
            double[] particle = Composition.scattered(composition.fractions(), relative(design.particle), own);
            double[] patch = Composition.scattered(particle, relative(design.feature), draws(dice));
            String particleName = (shared || first ? "P" : "Q") + (p + 1);
            for (int n = 1; n <= design.spots; n++) {
                double[] spot = Composition.scattered(patch, matrix.alike(design.within), draws(dice));
                Workstation.Place place = new Workstation.Place(name + " " + particleName + "." + n,
                    Optional.of(particleName), Optional.of(name), session, Optional.empty());
                double[] read = error.applied(spot, accuracy.relativeUncertainty(), composition.elements());
                spots.add(workstation.spot(place, read, OptionalDouble.empty()));
            }
        }
    }

    /** One particle against one: the answer speaks of these two, which then lie where the truth says. */
    private double[] relative(double scatter) {
        return matrix.alike(Math.min(design.dark, design.matrix) == 1 ? 0 : scatter);
    }

    private double[] draws(Dice dice) {
        return Composition.draws(design.scatter, matrix.size(), dice);
    }

    /** What a contrast says of every element, beside the true odds ratio of A over B. */
    static List<Said> said(Contrast contrast, Composition a, Composition b) {
        List<Said> said = new ArrayList<>();
        for (int i = 0; i < a.size(); i++) {
            Contrast.ElementContrast element = contrast.elements().get(i);
            double truth = Math.exp(a.logit(i) - b.logit(i));
            Estimate odds = element.oddsRatio().orElse(new Estimate(Double.NaN, 0, Double.POSITIVE_INFINITY));
            Contrast.Word word = element.verdict();
            int flag = word == Contrast.Word.HIGHER ? 1 : word == Contrast.Word.LOWER ? -1 : 0;
            int shift = (int) Math.signum(a.fractions()[i] - b.fractions()[i]);
            said.add(new Said(truth, odds.low(), odds.high(), flag, word == Contrast.Word.EQUIVALENT,
                element.confidence().orElse(Double.NaN), 0, shift));
        }
        return said;
    }
}
