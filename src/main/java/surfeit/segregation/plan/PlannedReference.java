package surfeit.segregation.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import surfeit.statistics.RandomPart;
import surfeit.statistics.ScatterEstimates;

/**
 * What reference spots will add to the random error of a planned mean, and how an answer will estimate it.
 *
 * <pre>
 *     error:      s_w / sqrt k_r
 *     estimated:  k_r >= 3   by these spots, df k_r - 1
 *                 k_r = 2    by these, df 1, or by the spots on the particles, df k (n - 1): the larger
 *                 k_r = 1    by the spots on the particles
 *     and by the scatter of the particle means, df k - 1, where that has more than one degree of freedom and nothing above
 * </pre>
 * As {@link surfeit.segregation.uncertainty.ReferenceScatter} does; what particles and their spots tell is taken as
 * independent of what else they tell.
 *
 * @param own   the error in log odds, with the degrees of freedom of the reference spots themselves, or of a pilot's
 * @param spots k_r
 * @param measured whether reference spots told their scatter; else it is taken from the sample's spots
 */
record PlannedReference(RandomPart own, int spots, boolean measured) {
    private static final int ENOUGH = 3;

    /** Spots on a piece of the nominal's composition, which scatter as those of the sample do. */
    static PlannedReference of(int spots, ParticleScatter scatter) {
        double ofOneSpot = scatter.within().orElse(scatter.between());
        return new PlannedReference(new RandomPart(ofOneSpot / Math.sqrt(spots), Math.max(spots - 1, 1)), spots, false);
    }

    /** What a pilot's reference spots scatter; those of the study are counted on to tell it as well. */
    static PlannedReference ofPilot(RandomPart scatter) {
        return new PlannedReference(scatter, ENOUGH, true);
    }

    /** Whether a piece that scatters less than is taken would be told by its own spots. */
    boolean mayBeQuiet() {
        return !measured && spots >= ENOUGH;
    }

    double error() {
        return own.standardError();
    }

    /** What answers will take for the error beside n spots a particle: without repeats that of particles. */
    double asEstimated(ParticleScatter scatter, int perParticle) {
        boolean byThemselves = spots >= ENOUGH || perParticle > 1 && scatter.within().isPresent();
        return byThemselves ? error() : Math.max(error(), scatter.ofParticleMeans(perParticle) / Math.sqrt(spots));
    }

    /** Equally likely estimates beside k particles of n spots each. */
    List<RandomPart> estimates(ParticleScatter scatter, int particles, int perParticle) {
        List<RandomPart> byThemselves = ScatterEstimates.fewEstimates(own);
        if (spots >= ENOUGH) {
            return byThemselves;
        }
        OptionalDouble within = perParticle > 1 ? scatter.within() : OptionalDouble.empty();
        double df = within.isPresent() ? (double) particles * (perParticle - 1) : particles - 1;
        boolean repeated = within.isPresent() || df > 1;
        if (!repeated) {
            return byThemselves;
        }
        double other = within.orElseGet(() -> scatter.ofParticleMeans(perParticle)) / Math.sqrt(spots);
        if (spots == 1) {
            return ScatterEstimates.fewEstimates(new RandomPart(other, df));
        }
        List<RandomPart> larger = new ArrayList<>();
        for (RandomPart part : byThemselves) {
            larger.add(part.standardError() > other ? part : new RandomPart(other, df));
        }
        return larger;
    }
}
