package surfeit.segregation.sums;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.segregation.uncertainty.AdditiveFloor;
import surfeit.segregation.uncertainty.GroupRuns;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.ParticleSums;

/** Builds group sums from the spots of a check case, through the program's own tallies. */
public final class Sums {
    private Sums() {
    }

    /** Spots per particle as fractions of anything; each spot is closed. */
    public static GroupSums of(List<double[][]> particles, double[] steps) {
        RunTally tally = new RunTally(particles.get(0)[0].length, false);
        for (int p = 0; p < particles.size(); p++) {
            for (double[] spot : particles.get(p)) {
                tally.add("P" + (p + 1), closed(spot), new double[0]);
            }
        }
        return new GroupSums(tally.particleSums(), tally.coSquares(), steps);
    }

    public static GroupSums of(List<double[][]> particles) {
        return of(particles, new double[particles.get(0)[0].length]);
    }

    /** Spots per particle of which each states the same uncertainties of its closed parts. */
    public static GroupSums stated(List<double[][]> particles, double[] uncertainties, double[] steps) {
        RunTally tally = new RunTally(uncertainties.length, false);
        for (int p = 0; p < particles.size(); p++) {
            for (double[] spot : particles.get(p)) {
                tally.add("P" + (p + 1), closed(spot), uncertainties);
            }
        }
        return new GroupSums(tally.particleSums(), tally.coSquares(), steps);
    }

    /** The same with standard uncertainties of the closed fractions. */
    public static GroupSums withUncertainties(GroupSums sums, List<double[][]> uncertainties) {
        List<ParticleSums> particles = new ArrayList<>();
        for (int p = 0; p < uncertainties.size(); p++) {
            ParticleSums own = sums.particles().get(p);
            double[] variances = new double[sums.elements()];
            for (double[] spot : uncertainties.get(p)) {
                for (int i = 0; i < variances.length; i++) {
                    variances[i] += spot[i] * spot[i];
                }
            }
            particles.add(new ParticleSums(own.name(), own.spots(), own.centre(), own.squares(),
                Optional.of(new ParticleSums.CountingSums(variances, variances))));
        }
        return new GroupSums(particles, sums.coSquares(), sums.roundingStep());
    }

    public static GroupRuns runs(GroupSums sums) {
        return new GroupRuns(List.of(sums), GroupRuns.none(sums.elements()));
    }

    public static double[] closed(double[] parts) {
        double sum = 0;
        for (double part : parts) {
            sum += part;
        }
        double[] closed = parts.clone();
        for (int i = 0; i < closed.length; i++) {
            closed[i] /= sum;
        }
        return closed;
    }

    public static List<double[][]> particles(JsonNode node) {
        List<double[][]> particles = new ArrayList<>();
        node.forEach(particle -> particles.add(matrix(particle)));
        return particles;
    }

    public static double[][] matrix(JsonNode node) {
        double[][] rows = new double[node.size()][];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = array(node.get(i));
        }
        return rows;
    }

    public static double[] array(JsonNode node) {
        double[] values = new double[node.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = node.get(i).asDouble();
        }
        return values;
    }

    /** An additive floor that does not depend on the composition, as the check cases state it. */
    public static AdditiveFloor constantFloor(double fraction, int elements) {
        double[] floor = new double[elements];
        java.util.Arrays.fill(floor, fraction);
        return new AdditiveFloor() {
            @Override
            public void at(double[] mean, double[] filled) {
                System.arraycopy(floor, 0, filled, 0, filled.length);
            }

            @Override
            public AdditiveFloor without(int element) {
                return constantFloor(fraction, elements - 1);
            }
        };
    }
}
