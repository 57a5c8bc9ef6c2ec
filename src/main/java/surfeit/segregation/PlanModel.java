package surfeit.segregation;

import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.statistics.Power;
import surfeit.statistics.RandomPart;

/**
 * The errors a planned mean of one element will have, in log odds.
 *
 * <pre>
 *     random:  s_b^2 / k + s_w^2 / (k n), k - 1 degrees of freedom; what reference spots scatter is added
 *     shared:  u at the shifted mean, times the root of 2 (1 - rho) with planned reference spots, and the nominal's own;
 *              near the additive floor the larger of that inside the hull and, for a shift d to C, d u_N / (C - C0)
 * </pre>
 * The shifted mean has the element at its wanted fraction and the others scaled to the rest.
 *
 * @param comparison  nominal, accuracy and floor; and the correction of a pilot's own reference spots
 * @param limit       nominal limit of the element the shift counts from
 * @param scatter     of particles and spots
 * @param reference   scatter of the reference spots, if any
 * @param residual    share of the calibration error that planned reference spots leave: 1 without
 */
record PlanModel(Comparison comparison, int element, double limit, ParticleScatter scatter,
                 Optional<RandomPart> reference, double residual) {
    /** However large a shift is tried, something is left of the element and of the others: log odds have no end. */
    private static final double LEAST_SHARE = 1e-12;
    /** So little of an element, or of the others, is none to the beam: a tenth of the additive error. Judgement. */
    private static final double AS_GOOD_AS_NONE = 1e-4;

    /** The composition with the element shifted and the others in proportion. */
    double[] mean(double shift) {
        double[] middles = comparison.nominal().middles();
        double own = Math.min(Math.max(fraction(shift), LEAST_SHARE), 1 - LEAST_SHARE);
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

    /** Calibration error and tolerance of the nominal, one standard uncertainty. */
    double shared(double shift) {
        SharedError errors = comparison.shared(mean(shift));
        double calibration = floorShare(shift) < NominalTrial.HULL_FLOOR ? errors.logit(element)
            : Math.max(errors.logitHull(element), asOnLinear(shift, errors.linear(element)));
        double tolerance = comparison.limits(element).uncertainty() / (limit * (1 - limit));
        return Math.hypot(residual * calibration, tolerance);
    }

    /** The log odds that stand to the shift as an error of a fraction stands to the fractions' difference. */
    private double asOnLinear(double shift, double error) {
        double difference = Math.abs(fraction(shift) - limit);
        return difference > 0 ? Math.abs(shift) * error / difference : error / (limit * (1 - limit));
    }

    /** Random error of a mean over particles of the kind. */
    RandomPart random(int particles, int spots) {
        return withReference(new RandomPart(scatter.ofParticleMeans(spots) / Math.sqrt(particles), particles - 1));
    }

    /** Random error for the measured particles themselves; empty where nothing would tell the scatter of spots. */
    Optional<RandomPart> ofTheseParticles(int particles, int spots) {
        if (spots < 2 || scatter.within().isEmpty() || scatter.within().getAsDouble() == 0) {
            return Optional.empty();
        }
        double error = scatter.within().getAsDouble() / Math.sqrt((double) particles * spots);
        return Optional.of(withReference(new RandomPart(error, (double) particles * (spots - 1))));
    }

    private RandomPart withReference(RandomPart part) {
        return reference.map(part::plus).orElse(part);
    }

    /** The smallest shift in a direction (1 or -1) that a mean with this random error shows. */
    double detectable(Power power, RandomPart random, int direction) {
        return direction * power.detectableShift(random, size -> shared(direction * size));
    }

    /** The smallest shift in a direction that any number of particles shows; what reference spots scatter stays. */
    double smallest(Power power, int direction) {
        return detectable(power, reference.orElse(RandomPart.known(0)), direction);
    }

    /** The smallest margin at which any number of particles shows that there is no shift. */
    double smallestMargin(Power power) {
        return power.smallestMargin(reference.orElse(RandomPart.known(0)), shared(0));
    }

    /** The share of the additive floor in the smaller part of the shifted mean. */
    double floorShare(double shift) {
        double own = fraction(shift);
        return comparison.shared(mean(shift)).floor(element) / Math.min(own, 1 - own);
    }

    PlanModel withScatter(ParticleScatter other) {
        return new PlanModel(comparison, element, limit, other, reference, residual);
    }

    /** With spots on a piece of the nominal's composition in the same session. */
    PlanModel withReferenceSpots(int spots, double correlation) {
        double scatterOfSpots = scatter.within().orElse(scatter.between());
        RandomPart part = new RandomPart(scatterOfSpots / Math.sqrt(spots), Math.max(spots - 1, 1));
        return new PlanModel(comparison, element, limit, scatter, Optional.of(part), Math.sqrt(2 * (1 - correlation)));
    }

    PlanModel withRelativeError(double relative) {
        return new PlanModel(new Comparison(comparison.nominal(), relative, comparison.floor(), comparison.margin(),
            comparison.reference()), element, limit, scatter, reference, residual);
    }
}
