package surfeit.segregation.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.contrast.GroupContrast;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.plan.MeasurementPlan.Remedy;
import surfeit.segregation.uncertainty.CalibrationError;
import surfeit.segregation.uncertainty.SharedDifference;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Judgement;
import surfeit.spot.Sample;
import surfeit.statistics.Power;
import surfeit.statistics.RandomPart;

/**
 * One question of a plan with the errors it is answered with.
 *
 * @param tests          tests in the answer; each counts with alpha over this number
 * @param referenceSpots reference spots that are counted with; 0 for none
 * @param caveats        what the pilot leaves open
 */
record PlanCase(PlanGoal goal, Sample sample, PlanModel model, int tests, int referenceSpots, List<Caveat> caveats) {
    /** More do not help: the correlation of sample and piece decides. Settled by simulation on invented data. */
    static final int REFERENCE_SPOTS = 5;
    private static final int PARTICLES_MOST = 1000;

    Judgement judgement() {
        return sample.judgement();
    }

    double margin() {
        return Math.log(judgement().marginOddsRatio());
    }

    /** Wanted shift in log odds, negative for less. */
    double shift() {
        return goal.wanted().logOddsFrom(model.limit());
    }

    /** For flags, under the risk of one of several tests. */
    Power power() {
        return new Power(judgement().alpha() / tests, goal.power());
    }

    /** For "consistent", which is not adjusted for the number of tests. */
    Power single() {
        return new Power(judgement().alpha(), goal.power());
    }

    OptionalInt particlesFor(PlanModel with, int spots) {
        return with.particlesFor(power(), shift(), spots);
    }

    /** The same errors seen from the other limit of the nominal; empty where there is nothing in that direction. */
    Optional<PlanModel> otherDirection() {
        NominalTest.Limits limits = model.comparison().limits(model.element());
        double other = goal.wanted().isUp() ? limits.low() : limits.high();
        return other > 0 && other < 1 ? Optional.of(model.from(other)) : Optional.empty();
    }

    /** What would make the calibration error smaller, in the order of advice. */
    List<Remedy> remedies() {
        List<Remedy> remedies = new ArrayList<>();
        double correlation = judgement().referenceCorrelation();
        PlanModel referenced = referenceSpots == 0 ? model.withReferenceSpots(REFERENCE_SPOTS, correlation) : model;
        if (referenceSpots == 0 && correlation > 0.5 && referenced.isWorthIt(model, shift(), goal.spotsPerParticle())) {
            remedies.add(remedy(Remedy.Kind.REFERENCE_SPOTS, referenced));
        }
        if (sample.accuracyClass() == AccuracyClass.STANDARDLESS) {
            remedies.add(remedy(Remedy.Kind.STANDARDS,
                model.withRelativeError(AccuracyClass.STANDARDS_BASED.relativeUncertainty())));
        }
        remedies.add(contrast());
        return remedies;
    }

    private Remedy remedy(Remedy.Kind kind, PlanModel with) {
        int direction = goal.wanted().isUp() ? 1 : -1;
        return new Remedy(kind, with.shared(shift()), particlesFor(with, goal.spotsPerParticle()),
            with.factorWithin(with.smallest(power(), goal.spotsPerParticle(), direction)));
    }

    /**
     * Feature against feature on the same particles: the error of one session mostly cancels, the scatter of both
     * counts as if independent.
     */
    private Remedy contrast() {
        double smallest = power().detectableShift(RandomPart.known(0),
            size -> contrastError(Math.copySign(size, shift())));
        OptionalInt particles = power().particlesFor(shift(), k -> new RandomPart(
            Math.sqrt(2) * model.scatter().ofParticleMeans(goal.spotsPerParticle()) / Math.sqrt(k), k - 1),
            contrastError(shift()), PARTICLES_MOST);
        return new Remedy(Remedy.Kind.CONTRAST, contrastError(shift()), particles,
            model.factorWithin(Math.copySign(smallest, shift())));
    }

    private double contrastError(double shift) {
        double[] shifted = model.mean(shift);
        double[] unshifted = model.mean(0);
        CalibrationError error =
            new CalibrationError(model.comparison().relative(), model.comparison().floor(), Optional.empty());
        SharedDifference difference =
            SharedDifference.of(shifted, error, unshifted, error, GroupContrast.SAME_RUN_CORRELATION);
        double own = shifted[model.element()];
        double other = unshifted[model.element()];
        return difference.uncertainty(model.element(), own * (1 - own), other * (1 - other));
    }
}
