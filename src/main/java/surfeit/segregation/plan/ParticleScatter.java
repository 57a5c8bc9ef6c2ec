package surfeit.segregation.plan;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * How much particles differ and how much spots on one particle do, as standard deviations of the log odds.
 *
 * @param between   standard deviation between particles
 * @param within    standard deviation between spots of one particle; empty where it is not known, then it is part of
 *                  {@code between}
 * @param estimatedFrom particles it was estimated from; empty where it was stated
 */
public record ParticleScatter(double between, OptionalDouble within, OptionalInt estimatedFrom) {
    private static final double MOST = 10;

    public ParticleScatter {
        double spots = within.orElse(0);
        if (!(between >= 0 && spots >= 0 && between + spots > 0 && between <= MOST && spots <= MOST)) {
            throw new PlanException("Standard deviations (log odds) lie from 0 to 10 and are not both 0, got " + between
                + " between particles and " + spots + " between spots.");
        }
    }

    /** Stated in log odds, which for a small fraction is the relative standard deviation. */
    public static ParticleScatter ofLogOdds(double between, double within) {
        return new ParticleScatter(between, OptionalDouble.of(within), OptionalInt.empty());
    }

    /**
     * Stated relative to the fraction, {@code sd / C}; log odds then vary by {@code (sd / C) / (1 - C)}.
     *
     * @param between  relative standard deviation between particles, 0.1 for 10 %
     * @param within   the same between spots of one particle
     * @param fraction C, the atomic fraction they were observed at
     */
    public static ParticleScatter ofRelative(double between, double within, double fraction) {
        if (!(fraction > 0 && fraction < 1)) {
            throw new PlanException("An atomic fraction lies between 0 and 1, got " + fraction + ".");
        }
        return ofLogOdds(between / (1 - fraction), within / (1 - fraction));
    }

    /** The same with both standard deviations multiplied. */
    ParticleScatter times(double factor) {
        OptionalDouble spots = within.isPresent() ? OptionalDouble.of(within.getAsDouble() * factor) : within;
        return new ParticleScatter(between * factor, spots, estimatedFrom);
    }

    /** Standard deviation of the mean of n spots on one particle, over particles. */
    double ofParticleMeans(int spots) {
        double own = within.orElse(0);
        return Math.sqrt(between * between + own * own / spots);
    }
}
