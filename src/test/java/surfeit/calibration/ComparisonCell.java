package surfeit.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.segregation.SampleComparison;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.blocks.SpotSource;
import surfeit.segregation.contrast.ComparedSample;
import surfeit.segregation.contrast.ComparisonAnswer;
import surfeit.spot.ReferencePiece;
import surfeit.spot.Spot;

/**
 * One sample against another: lot A against lot B of one invented alloy.
 *
 * <p>Lot A is moved from lot B as the truth asks. Each lot has particles of its own, or the very same ones measured
 * again. Both are measured in one session, whose calibration error acts on them with a correlation of 0.9, or in two
 * sessions with an error each, which reference spots of the alloy may correct. The interval of the odds ratio should
 * cover the true one.
 */
record ComparisonCell(Label label, Set<Truth> truths, Design design, Calibration calibration, Composition lot,
                      Workstation workstation) implements Cell {
    private static final SampleComparison PROGRAM = new SampleComparison();
    private static final int MOVED = 1;
    private static final String FEATURE = "whole particle";
    /** Correlation of the errors of two samples within a session, as the program takes it. */
    private static final double SAME_RUN = 0.9;

    /**
     * @param sameParticles true for the very same particles measured again
     * @param sameSession   true where one session measured both
     * @param between       relative scatter of particles
     * @param within        relative scatter of spots
     */
    record Design(boolean sameParticles, boolean sameSession, int particlesA, int particlesB, int spots,
                  Scatter scatter, double between, double within) {
    }

    @Override
    public Answer draw(Truth truth, Dice dice) {
        double logOdds = truth.logOdds(GridCells.SHIFT, dice);
        Composition a = lot.shifted(MOVED, logOdds);
        RunError errorA = RunError.draw(lot.size(), calibration.law(), dice);
        RunError errorB = errorA.correlated(design.sameSession ? SAME_RUN : 0, calibration.law(), dice);
        List<double[]> particlesA = particles(design.particlesA, dice);
        List<double[]> particlesB = design.sameParticles ? particlesA : particles(design.particlesB, dice);
        List<Spot> spotsA = spots(a, particlesA, errorA, "monday", dice);
        List<Spot> spotsB = spots(lot, particlesB, errorB, design.sameSession ? "monday" : "tuesday", dice);
        ComparisonAnswer answer = PROGRAM.compare(sample("A", spotsA), sample("B", spotsB), GroupBy.FEATURE,
            design.sameParticles, MethodSettings.DEFAULT_DETECTION_LIMIT_MASS_FRACTION);
        return new Answer(ContrastCell.said(answer.features().get(0).contrast().orElseThrow(), a, lot), MOVED, logOdds,
            lot.size() == 2);
    }

    private ComparedSample sample(String name, List<Spot> spots) {
        return new ComparedSample(name, calibration.sample(lot.nominal()), lot.nominal(), List.of(),
            SpotSource.of(spots));
    }

    private List<double[]> particles(int count, Dice dice) {
        List<double[]> particles = new ArrayList<>();
        for (int p = 0; p < count; p++) {
            particles.add(Composition.draws(design.scatter, lot.size(), dice));
        }
        return particles;
    }

    private List<Spot> spots(Composition composition, List<double[]> particles, RunError error, String session,
                             Dice dice) {
        List<Spot> spots = new ArrayList<>();
        double[] within = composition.alike(design.within);
        for (int p = 0; p < particles.size(); p++) {
            double[] particle = Composition.scattered(composition.fractions(), composition.alike(design.between),
                particles.get(p));
            String name = "P" + (p + 1);
            for (int n = 1; n <= design.spots; n++) {
                double[] z = Composition.draws(design.scatter, lot.size(), dice);
                double[] spot = Composition.scattered(particle, within, z);
                Workstation.Place place = new Workstation.Place(name + "." + n, Optional.of(name), Optional.of(FEATURE),
                    Optional.of(session), Optional.empty());
                spots.add(read(place, spot, error, composition));
            }
        }
        calibration.reference().ifPresent(piece -> reference(piece, error, session, spots, dice));
        return spots;
    }

    /** Reference spots on the alloy itself, in the session of this sample. */
    private void reference(Calibration.Piece piece, RunError error, String session, List<Spot> spots, Dice dice) {
        RunError own = calibration.ofPiece(piece, error, dice);
        double[] within = lot.alike(piece.within());
        for (int q = 1; q <= piece.spots(); q++) {
            double[] spot = Composition.scattered(lot.fractions(), within,
                Composition.draws(design.scatter, lot.size(), dice));
            Workstation.Place place = new Workstation.Place("R" + q, Optional.empty(), Optional.empty(),
                Optional.of(session), Optional.of(new ReferencePiece(lot.nominal(), true)));
            spots.add(read(place, spot, own, lot));
        }
    }

    private Spot read(Workstation.Place place, double[] truth, RunError error, Composition composition) {
        return workstation.spot(place, error.applied(truth, calibration.actual(), composition.elements()),
            OptionalDouble.empty());
    }
}
