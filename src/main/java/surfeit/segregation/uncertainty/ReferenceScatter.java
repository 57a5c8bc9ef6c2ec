package surfeit.segregation.uncertainty;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import surfeit.statistics.RandomPart;

/**
 * The random error that reference spots bring into a corrected group mean, on the logit scale.
 *
 * <pre>
 *     v_q = sum_{j usable} a_ij R_qj / R_j,     a_ii = 1,  a_ij = -m_j / (1 - m_i)
 *     s_r^2 = var(v) / k_r,  df k_r - 1    for three or more reference spots
 * </pre>
 * m corrected group mean, R_qj fraction of element j at reference spot q, R_j its mean. With one or two reference
 * spots their own variance (df 1), the spots' mean square within particles (df N - k) and the stated uncertainty of
 * the reference spots compete, and the largest wins; if none of these has more than one degree of freedom the
 * variance of the particle means competes too. Empty where nothing tells it, and where the mean is 0 or 1, which has no
 * logit: the reference is then not usable.
 */
public final class ReferenceScatter {
    private ReferenceScatter() {
    }

    public static Optional<RandomPart> of(ReferenceCorrection reference, GroupSums corrected, double[] mean, int element) {
        double q = Math.abs(mean[element] * (1 - mean[element]));
        if (q == 0) {
            return Optional.empty();
        }
        double[] row = sensitivity(reference, mean, element);
        int spots = reference.spotCount();
        double own = variance(reference, row);
        if (spots >= 3) {
            return Optional.of(new RandomPart(Math.sqrt(own / spots), spots - 1));
        }
        List<RandomPart> candidates = new ArrayList<>();
        if (spots == 2) {
            candidates.add(new RandomPart(Math.sqrt(own), 1));
        }
        corrected.withinMeanSquare(element).ifPresent(meanSquare ->
            candidates.add(new RandomPart(Math.sqrt(meanSquare) / q, corrected.withinDegreesOfFreedom())));
        reference.spotUncertainties().ifPresent(uncertainties ->
            candidates.add(new RandomPart(stated(reference, row, uncertainties), Double.POSITIVE_INFINITY)));
        boolean repeated = candidates.stream().anyMatch(part -> part.degreesOfFreedom() > 1);
        if (!repeated && corrected.particleCount() > 1) {
            candidates.add(new RandomPart(corrected.betweenDeviation(element, corrected.mean()[element]) / q,
                corrected.particleCount() - 1));
        }
        return candidates.stream().max(Comparator.comparingDouble(RandomPart::standardError))
            .map(part -> new RandomPart(part.standardError() / Math.sqrt(spots), part.degreesOfFreedom()));
    }

    private static double[] sensitivity(ReferenceCorrection reference, double[] mean, int element) {
        double[] row = new double[mean.length];
        for (int j = 0; j < row.length; j++) {
            double a = j == element ? 1 : -mean[j] / (1 - mean[element]);
            row[j] = reference.usable()[j] ? a / reference.mean()[j] : 0;
        }
        return row;
    }

    private static double variance(ReferenceCorrection reference, double[] row) {
        double[][] spots = reference.spots();
        if (spots.length < 2) {
            return 0;
        }
        double[] v = new double[spots.length];
        double mean = 0;
        for (int q = 0; q < v.length; q++) {
            for (int j = 0; j < row.length; j++) {
                v[q] += row[j] * spots[q][j];
            }
            mean += v[q] / v.length;
        }
        double sum = 0;
        for (double value : v) {
            sum += (value - mean) * (value - mean);
        }
        return sum / (v.length - 1);
    }

    private static double stated(ReferenceCorrection reference, double[] row, double[][] uncertainties) {
        double sum = 0;
        for (double[] uncertainty : uncertainties) {
            for (int j = 0; j < row.length; j++) {
                double term = row[j] * uncertainty[j];
                sum += term * term;
            }
        }
        return Math.sqrt(sum / reference.spotCount());
    }
}
