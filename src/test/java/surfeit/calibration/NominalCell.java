package surfeit.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.composition.Nominal;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.ReferencePiece;
import surfeit.spot.Spot;

/**
 * Features of a sample against its nominal.
 *
 * <p>One sample: the composition is moved from nominal as the truth asks; particles scatter about it, spots about
 * their particle; the run's calibration error acts on every spot alike, and on the reference spots as far as it
 * correlates; the workstation rounds; the program interprets. The interval should cover the composition the particles
 * scatter about; with one particle, that particle (which then does not differ from it); for {@link Truth#OWN}, the mean
 * of the very particles measured.
 *
 * @param alloy  composition where nothing differs
 * @param stated nominal compared with; a point at the alloy, or ranges that hold it
 */
record NominalCell(Label label, Set<Truth> truths, Design design, Calibration calibration, Composition alloy,
                   Nominal stated, Workstation workstation) implements Cell {
    private static final Interpreter PROGRAM = new Interpreter();

    /**
     * @param features how many features, with particles of their own and one calibration error
     * @param between  relative scatter of particles, per element
     * @param within   relative scatter of the spots of one particle, per element
     * @param moved    index of the element that is moved
     * @param shift    log odds ratio of a shift
     */
    record Design(int features, int particles, int spots, Scatter scatter, double[] between, double[] within, int moved,
                  double shift) {
    }

    @Override
    public Answer draw(Truth truth, Dice dice) {
        double logOdds = truth.logOdds(design.shift, dice);
        Composition composition = alloy.shifted(design.moved, logOdds);
        List<RunError> errors = calibration.draw(alloy.size(), dice);
        List<Spot> spots = new ArrayList<>();
        List<double[]> targets = new ArrayList<>();
        for (int feature = 0; feature < design.features; feature++) {
            double[] measured = feature(feature, composition, errors, spots, dice);
            targets.add(truth == Truth.OWN ? measured : composition.fractions());
        }
        calibration.reference().ifPresent(piece -> reference(piece, errors.get(0), spots, dice));
        Interpretation answer = PROGRAM.interpret(calibration.sample(stated), stated, SpotSource.of(spots),
            GroupBy.FEATURE, MethodSettings.DEFAULT_DETECTION_LIMIT_MASS_FRACTION);
        List<Said> said = new ArrayList<>();
        for (int feature = 0; feature < design.features; feature++) {
            said.addAll(said(answer.groups().get(feature), targets.get(feature), truth));
        }
        return new Answer(said, design.moved, logOdds, alloy.size() == 2 && design.features == 1);
    }

    /** Adds the spots of one feature; gives the mean of its particles. */
    private double[] feature(int feature, Composition composition, List<RunError> errors, List<Spot> spots, Dice dice) {
        double[] mean = new double[composition.size()];
        double[] between = design.particles == 1 ? composition.alike(0) : design.between;
        for (int p = 1; p <= design.particles; p++) {
            double[] particle = Composition.scattered(composition.fractions(), between, draws(dice));
            for (int i = 0; i < mean.length; i++) {
                mean[i] += particle[i] / design.particles;
            }
            String name = "F" + feature + "P" + p;
            int run = p % errors.size();
            for (int n = 1; n <= design.spots; n++) {
                double[] spot = Composition.scattered(particle, design.within, draws(dice));
                Workstation.Place place = new Workstation.Place(name + "S" + n, Optional.of(name),
                    Optional.of("feature " + feature), calibration.session(run), Optional.empty());
                double[] read = errors.get(run).applied(spot, calibration.actual(), composition.elements());
                spots.add(workstation.spot(place, read, sigma()));
            }
        }
        return mean;
    }

    /** One spot on one particle: only its stated uncertainty tells its scatter. */
    private OptionalDouble sigma() {
        boolean single = design.particles == 1 && design.spots == 1;
        return single ? OptionalDouble.of(design.within[0]) : OptionalDouble.empty();
    }

    private double[] draws(Dice dice) {
        return Composition.draws(design.scatter, alloy.size(), dice);
    }

    private void reference(Calibration.Piece piece, RunError error, List<Spot> spots, Dice dice) {
        RunError own = calibration.ofPiece(piece, error, dice);
        Composition composition = piece.composition().orElse(alloy);
        ReferencePiece known = new ReferencePiece(composition.nominal(), piece.composition().isEmpty());
        double[] within = composition.alike(piece.within());
        for (int q = 1; q <= piece.spots(); q++) {
            double[] spot = Composition.scattered(composition.fractions(), within, draws(dice));
            Workstation.Place place = new Workstation.Place("R" + q, Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.of(known));
            double[] read = own.applied(spot, calibration.actual(), composition.elements());
            spots.add(workstation.spot(place, read, OptionalDouble.empty()));
        }
    }

    private List<Said> said(GroupFinding group, double[] target, Truth truth) {
        List<Said> said = new ArrayList<>();
        for (int i = 0; i < target.length; i++) {
            ElementFinding finding = group.elements().get(i);
            Outcome outcome = truth == Truth.OWN ? finding.theseParticles().orElseThrow() : finding.outcome();
            int shift = target[i] > finding.nominalHigh() ? 1 : target[i] < finding.nominalLow() ? -1 : 0;
            said.add(new Said(target[i], outcome.low(), outcome.high(), direction(outcome.verdict()),
                outcome.verdict() == Verdict.CONSISTENT, outcome.confidence().orElse(Double.NaN),
                outcome.lean().map(NominalCell::direction).orElse(0), shift));
        }
        return said;
    }

    private static int direction(Verdict verdict) {
        return verdict == Verdict.ENRICHED ? 1 : verdict == Verdict.DEPLETED ? -1 : 0;
    }
}
