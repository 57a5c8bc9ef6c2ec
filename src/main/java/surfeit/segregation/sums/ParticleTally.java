package surfeit.segregation.sums;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import surfeit.segregation.uncertainty.ParticleSums;

/**
 * Adds up the closed spots of one particle: count, running mean, squared deviations, stated variances. Not thread-safe.
 *
 * <p>Running mean and squares after Welford, Technometrics 4 (1962) 419, from memory. Keeps the spots themselves only
 * where the median is asked for.
 */
final class ParticleTally {
    private final String name;
    private final double[] mean;
    private final double[] squares;
    private final double[] closedVariances;
    private final double[] partVariances;
    private final List<double[]> kept = new ArrayList<>();
    private final boolean median;
    private boolean everySpotHasVariance = true;
    private int spots;

    ParticleTally(String name, int elements, boolean median) {
        this.name = name;
        this.mean = new double[elements];
        this.squares = new double[elements];
        this.closedVariances = new double[elements];
        this.partVariances = new double[elements];
        this.median = median;
    }

    private ParticleTally(ParticleTally other) {
        this.name = other.name;
        this.mean = other.mean.clone();
        this.squares = other.squares.clone();
        this.closedVariances = other.closedVariances.clone();
        this.partVariances = other.partVariances.clone();
        this.median = other.median;
        this.kept.addAll(other.kept);
        this.everySpotHasVariance = other.everySpotHasVariance;
        this.spots = other.spots;
    }

    ParticleTally copy() {
        return new ParticleTally(this);
    }

    /**
     * Adds one closed spot, and its deviations to the products of the group.
     *
     * @param partUncertainties standard uncertainties of the parts on the closed scale, or an empty array
     * @param before            room for as many numbers as there are elements
     */
    void add(double[] closed, double[] partUncertainties, double[][] coSquares, double[] before) {
        spots++;
        int n = closed.length;
        for (int i = 0; i < n; i++) {
            before[i] = closed[i] - mean[i];
            mean[i] += before[i] / spots;
        }
        for (int i = 0; i < n; i++) {
            squares[i] += before[i] * (closed[i] - mean[i]);
            for (int j = 0; j < n; j++) {
                coSquares[i][j] += before[i] * (closed[j] - mean[j]);
            }
        }
        if (partUncertainties.length == 0) {
            everySpotHasVariance = false;
        } else {
            addVariances(closed, partUncertainties);
        }
        if (median) {
            kept.add(closed.clone());
        }
    }

    private void addVariances(double[] closed, double[] u) {
        for (int i = 0; i < u.length; i++) {
            partVariances[i] += u[i] * u[i];
            for (int j = 0; j < u.length; j++) {
                double term = ((i == j ? 1 : 0) - closed[i]) * u[j];
                closedVariances[i] += term * term;
            }
        }
    }

    /**
     * Takes in later spots of the particle, of which there is at least one. With n spots of mean m here and k of mean q
     * there, the products of deviations grow by (q_i - m_i) (q_j - m_j) n k / (n + k) beside their own. Source: Chan,
     * Golub and LeVeque, Amer. Statist. 37 (1983) 242 (from memory).
     *
     * @param coSquares products of the group, those of the later spots among them
     * @param apart     room for as many numbers as there are elements
     */
    void merge(ParticleTally later, double[][] coSquares, double[] apart) {
        double weight = (double) spots * later.spots / (spots + later.spots);
        double share = (double) later.spots / (spots + later.spots);
        spots += later.spots;
        int n = mean.length;
        for (int i = 0; i < n; i++) {
            apart[i] = later.mean[i] - mean[i];
            mean[i] += apart[i] * share;
            squares[i] += later.squares[i] + apart[i] * apart[i] * weight;
            closedVariances[i] += later.closedVariances[i];
            partVariances[i] += later.partVariances[i];
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                coSquares[i][j] += apart[i] * apart[j] * weight;
            }
        }
        everySpotHasVariance &= later.everySpotHasVariance;
        kept.addAll(later.kept);
    }

    /** Spots kept for their median are not written. */
    void writeTo(SumsOut out) {
        out.text("particle", name);
        out.count("spots", spots);
        out.yesOrNo("every spot has a variance", everySpotHasVariance);
        out.reals("mean", mean);
        out.reals("sum of squares", squares);
        out.reals("sum of closed variances", closedVariances);
        out.reals("sum of part variances", partVariances);
    }

    static ParticleTally readFrom(SumsIn in, int elements) {
        ParticleTally tally = new ParticleTally(in.text(), elements, false);
        tally.spots = (int) in.count();
        tally.everySpotHasVariance = in.yesOrNo();
        in.reals(tally.mean);
        in.reals(tally.squares);
        in.reals(tally.closedVariances);
        in.reals(tally.partVariances);
        return tally;
    }

    String name() {
        return name;
    }

    ParticleSums sums() {
        return new ParticleSums(name, spots, median && spots >= 3 ? medians() : mean.clone(), squares.clone(),
            everySpotHasVariance
                ? Optional.of(new ParticleSums.CountingSums(closedVariances.clone(), partVariances.clone()))
                : Optional.empty());
    }

    private double[] medians() {
        double[] medians = new double[mean.length];
        double sum = 0;
        for (int i = 0; i < medians.length; i++) {
            int element = i;
            double[] sorted = kept.stream().mapToDouble(spot -> spot[element]).sorted().toArray();
            int middle = sorted.length / 2;
            medians[i] = sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
            sum += medians[i];
        }
        double total = sum;
        return Arrays.stream(medians).map(value -> value / total).toArray();
    }
}
