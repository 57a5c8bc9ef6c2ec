package surfeit.segregation.sums;

import java.util.List;
import java.util.Optional;
import surfeit.segregation.uncertainty.ParticleSums;

/** A session as the unit that repeats: the unweighted mean of its particle means. */
final class SessionUnit {
    private SessionUnit() {
    }

    /** The session's particles as one unit; its stated variances are scaled so that their share of the mean is kept. */
    static ParticleSums of(String session, List<ParticleSums> particles) {
        int elements = particles.get(0).centre().length;
        double[] centre = new double[elements];
        double[] squares = new double[elements];
        double[] closed = new double[elements];
        double[] parts = new double[elements];
        int spots = particles.stream().mapToInt(ParticleSums::spots).sum();
        boolean counted = true;
        for (ParticleSums particle : particles) {
            counted &= particle.counting().isPresent();
            double scale = spots / ((double) particle.spots() * particles.size());
            for (int i = 0; i < elements; i++) {
                centre[i] += particle.centre()[i] / particles.size();
                squares[i] += particle.squares()[i];
                if (particle.counting().isPresent()) {
                    closed[i] += particle.counting().get().closed()[i] * scale * scale;
                    parts[i] += particle.counting().get().parts()[i] * scale * scale;
                }
            }
        }
        return new ParticleSums(session, spots, centre, squares,
            counted ? Optional.of(new ParticleSums.CountingSums(closed, parts)) : Optional.empty());
    }
}
