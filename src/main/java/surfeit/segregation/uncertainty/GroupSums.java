package surfeit.segregation.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * The particles of one group as sums, and the statistics that verdicts are made of.
 *
 * <pre>
 *     P_p mean of particle p,  n_p its spots,  k particles,  N = sum n_p,  m = sum P_p / k
 *     s = sd(P) / sqrt k        MSW = sum of squares within / (N - k)
 *     W = sqrt(MSW sum 1/n_p) / k                K = sqrt(sum_p sum sigma^2 / n_p^2) / k
 * </pre>
 * Particles weigh alike, spots are never pooled over particles. Fractions are atomic.
 *
 * @param particles     the particles, in the order of first appearance
 * @param coSquares     sums of products of deviations within particles, elements by elements
 * @param roundingStep  step of the last printed digit per element, as an atomic fraction; 0 where unknown
 */
public record GroupSums(List<ParticleSums> particles, double[][] coSquares, double[] roundingStep) {
    public GroupSums {
        particles = List.copyOf(particles);
        if (particles.isEmpty()) {
            throw new IllegalArgumentException("A group has at least one particle, got none.");
        }
    }

    public int elements() {
        return roundingStep.length;
    }

    public int particleCount() {
        return particles.size();
    }

    public long spotCount() {
        long count = 0;
        for (ParticleSums particle : particles) {
            count += particle.spots();
        }
        return count;
    }

    /** Unweighted mean of the particle means. */
    public double[] mean() {
        double[] mean = new double[elements()];
        for (ParticleSums particle : particles) {
            for (int i = 0; i < mean.length; i++) {
                mean[i] += particle.centre()[i];
            }
        }
        for (int i = 0; i < mean.length; i++) {
            mean[i] /= particles.size();
        }
        return mean;
    }

    /** Standard deviation of the particle means of one element; 0 for one particle. */
    public double betweenDeviation(int element, double mean) {
        double sum = 0;
        for (ParticleSums particle : particles) {
            double deviation = particle.centre()[element] - mean;
            sum += deviation * deviation;
        }
        return particles.size() < 2 ? 0 : Math.sqrt(sum / (particles.size() - 1));
    }

    /** Spots less particles: the degrees of freedom within particles. */
    public long withinDegreesOfFreedom() {
        return spotCount() - particles.size();
    }

    /** Mean square within particles; empty without repeated spots. */
    public Optional<Double> withinMeanSquare(int element) {
        long df = withinDegreesOfFreedom();
        return df < 1 ? Optional.empty() : Optional.of(coSquares[element][element] / df);
    }

    /** Standard error of the group mean from the scatter within particles, W; empty without repeated spots. */
    Optional<Double> withinError(int element) {
        long df = withinDegreesOfFreedom();
        if (df < 1) {
            return Optional.empty();
        }
        double inverse = 0;
        for (ParticleSums particle : particles) {
            inverse += 1.0 / particle.spots();
        }
        return Optional.of(Math.sqrt(coSquares[element][element] / df * inverse) / particles.size());
    }

    /** Standard error of the group mean from stated uncertainties, K; empty unless every spot has them. */
    Optional<Double> countingError(int element) {
        double sum = 0;
        for (ParticleSums particle : particles) {
            if (particle.counting().isEmpty()) {
                return Optional.empty();
            }
            sum += particle.counting().get().closed()[element] / ((double) particle.spots() * particle.spots());
        }
        return Optional.of(Math.sqrt(sum) / particles.size());
    }

    /** One particle by itself; its scatter within is its own. */
    GroupSums only(int index) {
        ParticleSums particle = particles.get(index);
        double[][] own = new double[elements()][elements()];
        for (int i = 0; i < elements(); i++) {
            own[i][i] = particle.squares()[i];
        }
        return new GroupSums(List.of(particle), own, roundingStep);
    }

    /** The particles of these names, in the order of the names; for comparing pairs. */
    public GroupSums only(List<String> names) {
        Map<String, ParticleSums> byName = new HashMap<>();
        particles.forEach(particle -> byName.put(particle.name(), particle));
        return new GroupSums(names.stream().map(byName::get).toList(), new double[elements()][elements()], roundingStep);
    }

    /** The group without one particle. */
    GroupSums without(int index) {
        List<ParticleSums> rest = new ArrayList<>(particles);
        ParticleSums gone = rest.remove(index);
        double[][] less = new double[elements()][];
        for (int i = 0; i < elements(); i++) {
            less[i] = coSquares[i].clone();
            less[i][i] = Math.max(less[i][i] - gone.squares()[i], 0);
        }
        return new GroupSums(rest, less, roundingStep);
    }

    /**
     * The group without one element, its particle means closed again over the rest.
     *
     * <p>Closing the means in place of every spot changes which elements explain a flag in at most 0.4 % of samples
     * (simulation on invented data). Scatter within and stated variances are carried to first order.
     */
    public GroupSums withoutElement(int element) {
        UnaryOperator<double[]> rest = values -> drop(values, element);
        double[] mean = mean();
        double left = 1 - mean[element];
        double[] c = rest.apply(mean);
        for (int i = 0; i < c.length; i++) {
            c[i] /= left;
        }
        double[][] within = closeAgain(dropBoth(coSquares, element), c, left);
        List<ParticleSums> reduced = new ArrayList<>(particles.size());
        for (ParticleSums particle : particles) {
            double[] centre = rest.apply(particle.centre());
            double remaining = Arrays.stream(centre).sum();
            for (int i = 0; i < centre.length; i++) {
                centre[i] /= remaining;
            }
            reduced.add(new ParticleSums(particle.name(), particle.spots(), centre, new double[centre.length],
                particle.counting().map(sums -> closeAgain(sums, rest, c, left))));
        }
        double[] steps = rest.apply(roundingStep);
        for (int i = 0; i < steps.length; i++) {
            steps[i] /= left;
        }
        return new GroupSums(reduced, within, steps);
    }

    private static ParticleSums.CountingSums closeAgain(ParticleSums.CountingSums sums, UnaryOperator<double[]> rest,
                                                        double[] c, double left) {
        double[] parts = rest.apply(sums.parts());
        double[] closed = new double[parts.length];
        for (int i = 0; i < parts.length; i++) {
            parts[i] /= left * left;
        }
        for (int i = 0; i < parts.length; i++) {
            for (int j = 0; j < parts.length; j++) {
                double jacobian = (i == j ? 1 : 0) - c[i];
                closed[i] += jacobian * jacobian * parts[j];
            }
        }
        return new ParticleSums.CountingSums(closed, parts);
    }

    private static double[][] closeAgain(double[][] sums, double[] c, double left) {
        int n = c.length;
        double[][] result = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                for (int k = 0; k < n; k++) {
                    for (int l = 0; l < n; l++) {
                        result[i][j] += ((i == k ? 1 : 0) - c[i]) * sums[k][l] * ((j == l ? 1 : 0) - c[j]) / (left * left);
                    }
                }
            }
            result[i][i] = Math.max(result[i][i], 0);
        }
        return result;
    }

    private static double[][] dropBoth(double[][] matrix, int index) {
        double[][] rows = new double[matrix.length - 1][];
        for (int i = 0, k = 0; i < matrix.length; i++) {
            if (i != index) {
                rows[k++] = drop(matrix[i], index);
            }
        }
        return rows;
    }

    /** The values without the one at a place. */
    public static double[] drop(double[] values, int index) {
        double[] rest = new double[values.length - 1];
        System.arraycopy(values, 0, rest, 0, index);
        System.arraycopy(values, index + 1, rest, index, rest.length - index);
        return rest;
    }
}
