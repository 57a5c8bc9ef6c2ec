package surfeit.statistics;

import java.util.OptionalInt;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;

/**
 * How likely a study shows a true shift, how many particles it takes, and what no number of particles can show.
 *
 * <p>θ true shift, u shared standard uncertainty, se the standard error of the mean with df degrees of freedom. The
 * study will estimate s, not know se, and flag where the estimate exceeds the half width h(s) of {@link CombinedError}:
 *
 * <pre>    power = mean over s² ~ se² χ²(df)/df of [ Φ((θ-h)/S) + Φ((-h-θ)/S) ],    S² = se² + u²</pre>
 *
 * the mean taken at 400 midpoints of probability; within 1e-4 of the noncentral t distribution for u = 0.
 * Shifts, u and standard deviations share one unit. Thread-safe.
 *
 * @param alpha  chance of a false flag, two-sided, 0.05 say
 * @param target wanted power, 0.8 say
 */
public record Power(double alpha, double target) {

    /** From three particles on; with two the scatter of the spots joins in, which this formula does not know. */
    public static final int FEWEST_PARTICLES = 3;

    private static final double RELATIVE_STEP = 1e-9;
    /** A shift so many times its own error is shown, or none is: no t quantile asked for comes near. Judgement. */
    private static final double FARTHEST = 1e15;
    /** A power this near the wanted one is the wanted one. */
    private static final double CLOSE_ENOUGH = 1e-8;

    public Power {
        if (!(alpha > 0 && alpha < 0.5 && target > alpha && target < 1)) {
            throw new IllegalArgumentException("Alpha is " + alpha + " and the wanted power " + target
                + "; expected 0 < alpha < power < 1 and alpha below 0.5.");
        }
    }

    /** The chance that a mean with this random error flags a true shift; degrees of freedom count as whole numbers. */
    public double of(double shift, RandomPart random, double shared) {
        return of(shift, ScatterEstimates.of(random), shared);
    }

    /** The same for a random error of which the study may find one estimate or another. */
    public double of(double shift, ScatterEstimates random, double shared) {
        double theta = Math.abs(shift);
        double total = Math.hypot(random.standardError(), shared);
        if (total == 0) {
            return theta > 0 ? 1 : 0;
        }
        QuantileCurve quantiles = QuantileCurve.of(1 - alpha / 2);
        double sum = 0;
        for (RandomPart estimate : random.estimates()) {
            double h = halfWidth(estimate, shared, quantiles);
            sum += NormalDistribution.survival((h - theta) / total) + NormalDistribution.cdf((-h - theta) / total);
        }
        return sum / random.estimates().size();
    }

    /**
     * The chance that two one-sided tests show a truly absent shift to lie inside a margin:
     *
     * <pre>    mean over s² of Φ((M-h)/S) - Φ((h-M)/S), where h, of confidence 1 - 2α, is below M;    else 0</pre>
     */
    public double ofEquivalence(double margin, RandomPart random, double shared) {
        return ofEquivalence(margin, margin, ScatterEstimates.of(random), shared);
    }

    /** The same for margins that differ downwards and upwards, and one of several estimates of the random error. */
    public double ofEquivalence(double below, double above, ScatterEstimates random, double shared) {
        double total = Math.hypot(random.standardError(), shared);
        if (total == 0) {
            return below > 0 && above > 0 ? 1 : 0;
        }
        QuantileCurve quantiles = QuantileCurve.of(1 - alpha);
        double sum = 0;
        for (RandomPart estimate : random.estimates()) {
            double h = halfWidth(estimate, shared, quantiles);
            double from = h - below;
            double to = above - h;
            sum += to > from ? NormalDistribution.cdf(to / total) - NormalDistribution.cdf(from / total) : 0;
        }
        return sum / random.estimates().size();
    }

    /** Half width of the interval a study draws with an estimate of its random error and this shared one. */
    public interface HalfWidth {
        double of(RandomPart estimate, double shared);
    }

    /** How many standard errors the true mean lies beyond where a study with this estimate begins to flag. */
    public interface Excess {
        double of(RandomPart estimate, HalfWidth halfWidth);
    }

    /** The chance of a flag where errors change with the mean: the mean over the estimates of Φ(excess). */
    public double of(ScatterEstimates random, Excess excess) {
        QuantileCurve quantiles = QuantileCurve.of(1 - alpha / 2);
        double sum = 0;
        for (RandomPart estimate : random.estimates()) {
            sum += NormalDistribution.cdf(excess.of(estimate, (part, shared) -> halfWidth(part, shared, quantiles)));
        }
        return sum / random.estimates().size();
    }

    /** As {@link CombinedError#halfWidth(RandomPart, double, double)}, the quantiles from a curve. */
    private static double halfWidth(RandomPart random, double shared, QuantileCurve quantiles) {
        double s = random.standardError();
        double df = random.degreesOfFreedom();
        if (s == 0 && shared == 0) {
            return 0;
        }
        double both = quantiles.at(CombinedError.degreesOfFreedom(s, df, shared)) * Math.sqrt(s * s + shared * shared);
        return Math.max(both, quantiles.at(df) * s);
    }

    /**
     * The smallest number of particles, from {@value #FEWEST_PARTICLES} on, with the wanted power; empty where
     * {@code most} do not suffice.
     *
     * @param ofParticles the random error of the mean of so many particles
     */
    public OptionalInt particlesFor(double shift, IntFunction<RandomPart> ofParticles, double shared, int most) {
        return cannotBeReached(shift, shared) ? OptionalInt.empty()
            : particlesWith(particles -> of(shift, ofParticles.apply(particles), shared), most);
    }

    /** The smallest number of particles for which a chance that grows with them is the wanted one. */
    public OptionalInt particlesWith(IntToDoubleFunction chance, int most) {
        return fewest(particles -> chance.applyAsDouble(particles) >= target, most);
    }

    private static OptionalInt fewest(IntPredicate suffices, int most) {
        if (most < FEWEST_PARTICLES) {
            return OptionalInt.empty();
        }
        int below = FEWEST_PARTICLES - 1;
        int enough = FEWEST_PARTICLES;
        while (!suffices.test(enough)) {
            if (enough == most) {
                return OptionalInt.empty();
            }
            below = enough;
            enough = (int) Math.min(2L * enough, most);
        }
        while (enough - below > 1) {
            int middle = below + (enough - below) / 2;
            if (suffices.test(middle)) {
                enough = middle;
            } else {
                below = middle;
            }
        }
        return OptionalInt.of(enough);
    }

    /**
     * The smallest shift that a mean with this random error shows with the wanted power; infinite where no shift is shown.
     *
     * @param sharedAt the shared error at a shift
     */
    public double detectableShift(RandomPart random, DoubleUnaryOperator sharedAt) {
        return smallestWith(shift -> of(shift, random, sharedAt.applyAsDouble(shift)),
            random.standardError() + sharedAt.applyAsDouble(0));
    }

    /** The smallest margin inside which a truly absent shift is shown to lie with the wanted power. */
    public double smallestMargin(RandomPart random, double shared) {
        return smallestWith(margin -> ofEquivalence(margin, random, shared), random.standardError() + shared);
    }

    /**
     * Where a chance that rises with a shift or margin reaches the wanted one; infinite where it nowhere does. Regula falsi
     * in its Illinois form (Dowell and Jarratt, BIT 11 (1971) 168, from memory), which halves the weight of an end that
     * stays.
     *
     * @param start about how large the errors are that stand against it
     */
    public double smallestWith(DoubleUnaryOperator power, double start) {
        if (start == 0) {
            return 0;
        }
        double low = 0;
        double below = -target;
        double high = 3 * start;
        double above = power.applyAsDouble(high) - target;
        while (above < 0) {
            if (high > FARTHEST * start) {
                return Double.POSITIVE_INFINITY;
            }
            low = high;
            below = above;
            high *= 2;
            above = power.applyAsDouble(high) - target;
        }
        boolean wasBelow = false;
        boolean wasAbove = false;
        while (high - low > RELATIVE_STEP * high) {
            double middle = (low * above - high * below) / (above - below);
            double value = power.applyAsDouble(middle) - target;
            if (Math.abs(value) < CLOSE_ENOUGH) {
                return middle;
            }
            if (value < 0) {
                low = middle;
                below = value;
                above = wasBelow ? above / 2 : above;
            } else {
                high = middle;
                above = value;
                below = wasAbove ? below / 2 : below;
            }
            wasBelow = value < 0;
            wasAbove = !wasBelow;
        }
        return high;
    }

    /**
     * Whether even infinitely many particles leave the power below the wanted one, because the shared error does not
     * shrink: the shift is below {@link #smallestShift}.
     */
    public boolean cannotBeReached(double shift, double shared) {
        return smallestShift(shared) > Math.abs(shift);
    }

    /**
     * The shift that infinitely many particles show with the wanted power: (z(1-α/2) + z(power)) u, which is 2.80 u at
     * 5 and 80 %.
     */
    public double smallestShift(double shared) {
        return (NormalDistribution.quantile(1 - alpha / 2) + NormalDistribution.quantile(target)) * shared;
    }

    /**
     * The margin inside which infinitely many particles show a truly absent shift to lie, with the wanted power:
     * (z(1-α) + z((1+power)/2)) u, 2.93 u at 5 and 80 %.
     */
    public double smallestMargin(double shared) {
        return (NormalDistribution.quantile(1 - alpha) + NormalDistribution.quantile((1 + target) / 2)) * shared;
    }
}
