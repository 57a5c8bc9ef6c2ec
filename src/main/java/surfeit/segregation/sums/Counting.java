package surfeit.segregation.sums;

import surfeit.spot.Counts;
import surfeit.spot.ReportedValue;
import surfeit.statistics.Background;

/**
 * What a measured value says of its own counting, as fractions of the basis of its spot; NaN where it says nothing.
 *
 * <pre>
 *     u = |C| sqrt(N + 2 B) / N        L = C (2.71 + 3.29 sqrt(2 B)) / N
 * </pre>
 * C the value, N net counts above 0, B background counts under the line, a {@linkplain Background#PAIRED paired}
 * background; u its standard uncertainty and L its detection limit, of which the stated ones come first. L is that of a
 * value above zero: counts tell a fraction only beside one. Without net counts u is L / 3.29, where L is stated.
 */
final class Counting {
    /** Twice the normal quantile at 95 %: a detection limit is 3.29 standard uncertainties of an empty place. Currie 1968, from memory. */
    static final double LIMIT_TO_UNCERTAINTY = 3.29;

    private Counting() {
    }

    /** u, the standard uncertainty. */
    static double uncertainty(ReportedValue.Measured measured) {
        if (!Double.isNaN(measured.sigma())) {
            return measured.sigma();
        }
        if (measured.counts().isEmpty()) {
            return Double.NaN;
        }
        Counts counts = measured.counts().get();
        if (counts.net() > 0) {
            return Math.abs(measured.fraction()) * Background.PAIRED.sigmaOfNet(counts.net(), counts.background()) / counts.net();
        }
        return measured.limit().isPresent() ? measured.limit().getAsDouble() / LIMIT_TO_UNCERTAINTY : Double.NaN;
    }

    /** L, the detection limit. */
    static double limit(ReportedValue.Measured measured) {
        if (measured.limit().isPresent()) {
            return measured.limit().getAsDouble();
        }
        if (measured.counts().isEmpty() || measured.counts().get().net() <= 0 || measured.fraction() <= 0) {
            return Double.NaN;
        }
        Counts counts = measured.counts().get();
        return measured.fraction() * Background.PAIRED.detectionLimit(counts.background()) / counts.net();
    }
}
