package surfeit.segregation.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.statistics.RandomPart;

/**
 * A weighted sum of the closed fractions of a group mean, {@code L = sum_i w_i m_i}, with its random and shared error.
 *
 * <pre>
 *     random, these particles:  W^2 = w' S w / (N - k) sum 1/n_p / k^2  (N - k)
 *                               K^2 = sum_p sum_spots sum_j (w_j - L)^2 u_j^2 / n_p^2 / k^2  (infinite)
 *     random, without repeats or of the kind:  sd(L_p) / sqrt k  (k - 1)
 *     shared:                   u^2 = sum_j (w_j - L)^2 e_j^2
 * </pre>
 * S sums of products within particles, n_p spots of a particle, k particles, N spots, u_j uncertainties of the parts of
 * a spot and e_j of the shared error, both before closing. Every random part is at least the rounding of the input.
 */
public record LinearForm(double[] weights) {

    double value(double[] fractions) {
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            sum += weights[i] * fractions[i];
        }
        return sum;
    }

    /** Standard uncertainty from errors of the single elements before closing. */
    public double shared(double[] mean, double[] errors) {
        double value = value(mean);
        double sum = 0;
        for (int j = 0; j < weights.length; j++) {
            double term = (weights[j] - value) * errors[j];
            sum += term * term;
        }
        return Math.sqrt(sum);
    }

    /** Random parts for the measured particles; of the particles' scatter where no spot was repeated. */
    public List<RandomPart> parts(GroupSums sums) {
        double floor = rounding(sums);
        List<RandomPart> parts = new ArrayList<>(2);
        within(sums).ifPresent(part -> parts.add(part.atLeast(floor)));
        counting(sums).ifPresent(part -> parts.add(part.atLeast(floor)));
        if (parts.isEmpty() && sums.particleCount() > 1) {
            double[] values = sums.particles().stream().mapToDouble(particle -> value(particle.centre())).toArray();
            parts.add(RandomPart.ofMean(values).atLeast(floor));
        }
        return parts;
    }

    /**
     * Random parts for particles of the kind: their scatter from three on; from two, at least what their spots predict;
     * for one, that of its spots.
     */
    public List<RandomPart> ofKind(GroupSums sums) {
        if (sums.particleCount() == 1) {
            return parts(sums);
        }
        double[] values = sums.particles().stream().mapToDouble(particle -> value(particle.centre())).toArray();
        double between = RandomPart.ofMean(values).atLeast(rounding(sums)).standardError();
        if (sums.particleCount() == 2) {
            for (RandomPart part : parts(sums)) {
                between = Math.max(between, part.standardError());
            }
        }
        return List.of(new RandomPart(between, sums.particleCount() - 1));
    }

    private double rounding(GroupSums sums) {
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            double step = weights[i] * sums.roundingStep()[i];
            sum += step * step;
        }
        return Math.sqrt(sum / 12);
    }

    private Optional<RandomPart> within(GroupSums sums) {
        long df = sums.withinDegreesOfFreedom();
        if (df < 1) {
            return Optional.empty();
        }
        double square = 0;
        for (int i = 0; i < weights.length; i++) {
            for (int j = 0; j < weights.length; j++) {
                square += weights[i] * sums.coSquares()[i][j] * weights[j];
            }
        }
        double inverse = 0;
        for (ParticleSums particle : sums.particles()) {
            inverse += 1.0 / particle.spots();
        }
        return Optional.of(new RandomPart(Math.sqrt(Math.max(square, 0) / df * inverse) / sums.particleCount(), df));
    }

    private Optional<RandomPart> counting(GroupSums sums) {
        double value = value(sums.mean());
        double sum = 0;
        for (ParticleSums particle : sums.particles()) {
            if (particle.counting().isEmpty()) {
                return Optional.empty();
            }
            double[] variances = particle.counting().get().parts();
            for (int j = 0; j < weights.length; j++) {
                double slope = (weights[j] - value) / particle.spots();
                sum += slope * slope * variances[j];
            }
        }
        return Optional.of(RandomPart.known(Math.sqrt(sum) / sums.particleCount()));
    }
}
