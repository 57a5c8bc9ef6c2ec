package surfeit.segregation.plan;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import surfeit.segregation.nominal.Comparison;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.nominal.NominalTrial;
import surfeit.segregation.uncertainty.ReferenceCorrection;
import surfeit.segregation.uncertainty.SharedError;
import surfeit.statistics.Power;
import surfeit.statistics.RandomPart;
import surfeit.statistics.ScatterEstimates;

/**
 * The errors a planned mean of one element will have, in log odds, and the chances that follow.
 *
 * <pre>
 *     random:  s_b^2 / k + s_w^2 / (k n), k - 1 degrees of freedom; what reference spots scatter is added
 *     shared:  u at the shifted mean C, less what reference spots take away of it, and the nominal's own
 *     chance:  on the logit scale, shift d = logit C - logit C0. Where answers take the hull (s or the additive floor
 *              large beside the smaller part): of more, that the mean passes C*, from where on both scales flag with
 *              their errors there; of less, the smaller of the chances on the logit and the linear scale,
 *              d = (C - C0) / (C (1 - C)), u = u_N / (C (1 - C))
 * </pre>
 * The shifted mean has the element at its wanted fraction and the others scaled to the rest. The hull is taken where it
 * is expected, not draw by draw.
 *
 * @param comparison  nominal, accuracy and floor; and the correction by reference spots, a pilot's or planned ones
 * @param limit       nominal limit of the element the shift counts from
 * @param scatter     of particles and spots
 * @param reference   scatter of the reference spots, if any
 */
record PlanModel(Comparison comparison, int element, double limit, ParticleScatter scatter,
                 Optional<PlannedReference> reference) {
    /** However large a shift is tried, something is left of the element and of the others: log odds have no end. */
    private static final double LEAST_SHARE = 1e-12;
    /** So little of an element, or of the others, is none to the beam: a tenth of the additive error. Judgement. */
    private static final double AS_GOOD_AS_NONE = 1e-4;
    /** A sample takes no larger margin; log odds. */
    private static final double MARGIN_MOST = Math.log(100);
    private static final int PARTICLES_MOST = 1000;
    private static final int BORDER_STEPS = 30;
    private static final double BORDER_CLOSE = 1e-3;
    /** So many particles that more would show nothing more. */
    private static final int ENDLESS = 1_000_000;

    /** The composition with the element shifted and the others in proportion. */
    double[] mean(double shift) {
        double[] middles = comparison.nominal().middles();
        double own = within(fraction(shift));
        double rest = 1 - middles[element];
        double[] mean = new double[middles.length];
        for (int j = 0; j < mean.length; j++) {
            mean[j] = j == element ? own : middles[j] * (1 - own) / rest;
        }
        return mean;
    }

    double fraction(double shift) {
        return NominalTest.expit(NominalTest.logit(limit) + shift);
    }

    double factor(double shift) {
        return fraction(shift) / limit;
    }

    /** The same; empty where the shift goes to the end of all compositions, so that none of them shows it. */
    OptionalDouble factorWithin(double shift) {
        double own = fraction(shift);
        return own > AS_GOOD_AS_NONE && own < 1 - AS_GOOD_AS_NONE ? OptionalDouble.of(own / limit) : OptionalDouble.empty();
    }

    /** Calibration error and tolerance of the nominal, one standard uncertainty; near the floor the larger of both scales. */
    double shared(double shift) {
        Scales scales = new Scales(shift);
        return !scales.floorCounts() ? scales.logitError()
            : Math.max(scales.logitError(), scales.linearError() * scales.ratio());
    }

    /** The chance of flagging a shift with this random error. */
    double chance(Power power, double shift, PlannedError random) {
        Scales scales = new Scales(shift);
        return random.least(estimates -> chance(power, shift, scales, estimates));
    }

    private double chance(Power power, double shift, Scales scales, ScatterEstimates random) {
        if (!scales.hull(random)) {
            return power.of(shift, random, scales.logitError());
        }
        return shift > 0 ? chanceOfMore(power, scales, random) : Math.min(power.of(shift, random, scales.logitError()),
            power.of(scales.linearShift(), random, scales.linearError()));
    }

    /**
     * Answers judge the mean they get by the errors at that mean, which grow with it where little is enriched: the border
     * C* is looked for where it lies. What is depleted has the additive error on either side of it.
     */
    private double chanceOfMore(Power power, Scales truth, ScatterEstimates random) {
        double total = Math.hypot(random.standardError(), truth.logitError());
        Scales[] near = {truth};
        return power.of(random, (estimate, halfWidth) -> {
            double border = border(near[0], estimate, halfWidth);
            for (int step = 0; step < BORDER_STEPS && Math.abs(border - near[0].own) > BORDER_CLOSE * border; step++) {
                near[0] = new Scales(NominalTest.logit(border) - NominalTest.logit(limit));
                border = border(near[0], estimate, halfWidth);
            }
            return (truth.shift - NominalTest.logit(border) + NominalTest.logit(limit)) / total;
        });
    }

    /** The mean from which on both scales flag, with the errors at another mean near it. */
    private double border(Scales near, RandomPart estimate, Power.HalfWidth halfWidth) {
        double linear = limit + halfWidth.of(estimate, near.linearError()) * near.slope;
        double logit = fraction(halfWidth.of(estimate, near.logitError()));
        return within(Math.max(linear, logit));
    }

    private static double within(double own) {
        return Math.min(Math.max(own, LEAST_SHARE), 1 - LEAST_SHARE);
    }

    /** The chance of showing that nothing is shifted, within a margin. */
    double chanceOfConsistent(Power power, double margin, PlannedError random) {
        Scales scales = new Scales(0);
        return random.least(estimates -> chanceOfConsistent(power, margin, scales, estimates));
    }

    private double chanceOfConsistent(Power power, double margin, Scales scales, ScatterEstimates random) {
        double chance = power.ofEquivalence(margin, margin, random, scales.logitError());
        return scales.hull(random) ? Math.min(chance, power.ofEquivalence((limit - fraction(-margin)) / scales.slope,
            (fraction(margin) - limit) / scales.slope, random, scales.linearError())) : chance;
    }

    /** A shift on both scales, the linear one divided by C (1 - C), with the errors there. */
    private final class Scales {
        private final double shift;
        private final double own;
        private final double slope;
        private final SharedError errors;

        Scales(double shift) {
            double[] mean = mean(shift);
            this.shift = shift;
            this.own = mean[element];
            this.slope = own * (1 - own);
            this.errors = comparison.shared(mean);
        }

        boolean floorCounts() {
            return errors.floor(element) / Math.min(own, 1 - own) >= NominalTrial.HULL_FLOOR;
        }

        boolean hull(ScatterEstimates random) {
            return floorCounts() || random.standardError() * Math.max(own, 1 - own) >= NominalTrial.HULL_RANDOM;
        }

        double logitError() {
            return Math.hypot(floorCounts() ? errors.logitHull(element) : errors.logit(element),
                tolerance() / (limit * (1 - limit)));
        }

        double linearError() {
            return Math.hypot(errors.linear(element), tolerance()) / slope;
        }

        double linearShift() {
            return (own - limit) / slope;
        }

        /** Shift on the logit over that on the linear scale. */
        double ratio() {
            return own == limit ? 1 : shift / linearShift();
        }

        private double tolerance() {
            return comparison.limits(element).uncertainty();
        }
    }

    /** Random error of a mean over particles of the kind. */
    PlannedError random(int particles, int spots) {
        return withReference(new RandomPart(scatter.ofParticleMeans(spots) / Math.sqrt(particles), particles - 1),
            particles, spots);
    }

    /** Random error for the measured particles themselves; empty where nothing would tell the scatter of spots. */
    Optional<PlannedError> ofTheseParticles(int particles, int spots) {
        if (spots < 2 || scatter.within().isEmpty() || scatter.within().getAsDouble() == 0) {
            return Optional.empty();
        }
        double error = scatter.within().getAsDouble() / Math.sqrt((double) particles * spots);
        return Optional.of(withReference(new RandomPart(error, (double) particles * (spots - 1)), particles, spots));
    }

    private PlannedError withReference(RandomPart part, int particles, int spots) {
        ScatterEstimates without = ScatterEstimates.of(part);
        if (reference.isEmpty()) {
            return PlannedError.of(without);
        }
        ScatterEstimates with = ScatterEstimates.ofSum(part, reference.get().error(),
            reference.get().estimates(scatter, particles, spots));
        return reference.get().mayBeQuiet() ? new PlannedError(with, without) : PlannedError.of(with);
    }

    /** What no number of particles takes away: the scatter of the reference spots. */
    private PlannedError endless(int spots) {
        return withReference(RandomPart.known(0), ENDLESS, spots);
    }

    /** The smallest shift in a direction (1 or -1) that a mean with this random error shows; infinite where none. */
    double detectable(Power power, PlannedError random, int direction) {
        double most = -NominalTest.logit(LEAST_SHARE) - direction * NominalTest.logit(limit);
        if (chance(power, direction * most, random) < power.target()) {
            return direction * Double.POSITIVE_INFINITY;
        }
        return direction * power.smallestWith(size -> chance(power, direction * Math.min(size, most), random),
            random.standardError() + shared(0));
    }

    /** The smallest shift in a direction that any number of particles shows. */
    double smallest(Power power, int spots, int direction) {
        return detectable(power, endless(spots), direction);
    }

    /** Whether any number of particles leaves the chance below the wanted one. */
    boolean cannotBeReached(Power power, double shift, int spots) {
        return chance(power, shift, endless(spots)) < power.target();
    }

    OptionalInt particlesFor(Power power, double shift, int spots) {
        return cannotBeReached(power, shift, spots) ? OptionalInt.empty()
            : power.particlesWith(k -> chance(power, shift, random(k, spots)), PARTICLES_MOST);
    }

    OptionalInt particlesForConsistent(Power power, double margin, int spots) {
        return chanceOfConsistent(power, margin, endless(spots)) < power.target() ? OptionalInt.empty()
            : power.particlesWith(k -> chanceOfConsistent(power, margin, random(k, spots)), PARTICLES_MOST);
    }

    /** The smallest margin at which a mean with this random error shows that there is no shift; infinite where none. */
    double smallestMargin(Power power, PlannedError random) {
        if (chanceOfConsistent(power, MARGIN_MOST, random) < power.target()) {
            return Double.POSITIVE_INFINITY;
        }
        return power.smallestWith(margin -> chanceOfConsistent(power, Math.min(margin, MARGIN_MOST), random),
            random.standardError() + shared(0));
    }

    /** The smallest margin at which any number of particles shows that there is no shift. */
    double smallestMargin(Power power, int spots) {
        return smallestMargin(power, endless(spots));
    }

    /** The share of the additive floor in the smaller part of the shifted mean. */
    double floorShare(double shift) {
        double own = fraction(shift);
        return comparison.shared(mean(shift)).floor(element) / Math.min(own, 1 - own);
    }

    PlanModel withScatter(ParticleScatter other) {
        return new PlanModel(comparison, element, limit, other, reference);
    }

    /** The same errors counted from another limit of the nominal. */
    PlanModel from(double other) {
        return new PlanModel(comparison, element, other, scatter, reference);
    }

    /** With spots on a piece of the nominal's composition in the same session, known without error. */
    PlanModel withReferenceSpots(int spots, double correlation) {
        double[] middles = comparison.nominal().middles();
        double[][] piece = new double[spots][];
        Arrays.fill(piece, middles);
        Optional<ReferenceCorrection> correction = ReferenceCorrection.of(piece, Optional.empty(), middles,
            new double[middles.length], correlation, comparison.floor(), false);
        return new PlanModel(comparison.withReference(correction), element, limit, scatter,
            correction.map(made -> PlannedReference.of(spots, scatter)));
    }

    /** Whether answers would use these reference spots: what is left and what they scatter is less than without. */
    boolean isWorthIt(PlanModel without, double shift, int perParticle) {
        return Math.hypot(shared(shift), reference.map(own -> own.asEstimated(scatter, perParticle)).orElse(0.0))
            < without.shared(shift);
    }

    PlanModel withRelativeError(double relative) {
        return new PlanModel(new Comparison(comparison.nominal(), relative, comparison.floor(), comparison.margin(),
            comparison.reference()), element, limit, scatter, reference);
    }
}
