package surfeit.statistics;

import java.util.List;

/**
 * Spots nested in particles: how much the particles differ, how much the spots within one differ.
 *
 * <p>One-way analysis of variance with groups (particles) of any size:
 *
 * <pre>    MSB = Σ n_p (P_p - x̄)²/(k-1)    MSW = Σ Σ (x - P_p)²/(N-k)    n0 = (N - Σn_p²/N)/(k-1)
 *    between = max(0, (MSB - MSW)/n0)    within = MSW</pre>
 *
 * k groups of n_p values, N in all, P_p group means, x̄ mean of all values. A negative estimate of the variance
 * between is reported as 0. Maximum likelihood (REML) would weight unequal groups otherwise; it is not offered,
 * because the mean and its error are taken from the unweighted group means. Immutable. Source: Searle, Casella and
 * McCulloch, Variance Components (1992) (from memory).
 */
public final class NestedVariance {

    private final long valueCount;
    private final double squaresBetween;
    private final double squaresWithin;
    private final double typicalGroupSize;
    private final Moments ofMeans;

    private NestedVariance(List<Moments> groups) {
        double[] means = groups.stream().mapToDouble(Moments::mean).toArray();
        ofMeans = Moments.of(means);
        valueCount = groups.stream().mapToLong(Moments::count).sum();
        double grand = 0;
        double squaredSizes = 0;
        double within = 0;
        for (Moments group : groups) {
            double n = group.count();
            grand += n / valueCount * (group.mean() - ofMeans.mean());
            squaredSizes += n * n;
            within += group.sumOfSquaredDeviations();
        }
        double between = 0;
        for (Moments group : groups) {
            double deviation = group.mean() - ofMeans.mean() - grand;
            between += group.count() * deviation * deviation;
        }
        squaresBetween = between;
        squaresWithin = within;
        typicalGroupSize = (valueCount - squaredSizes / valueCount) / (groups.size() - 1);
    }

    /** From the moments of each group. @throws IllegalArgumentException for no group or an empty one */
    public static NestedVariance of(List<Moments> groups) {
        if (groups.isEmpty() || groups.stream().anyMatch(g -> g.count() == 0)) {
            throw new IllegalArgumentException("Expected one or more groups with at least 1 value each, found sizes "
                + groups.stream().map(Moments::count).toList() + ".");
        }
        return new NestedVariance(groups);
    }

    public int groupCount() {
        return (int) ofMeans.count();
    }

    public long degreesOfFreedomBetween() {
        return ofMeans.count() - 1;
    }

    public long degreesOfFreedomWithin() {
        return valueCount - ofMeans.count();
    }

    /** MSB. @throws IllegalStateException for one group */
    public double meanSquareBetween() {
        requireGroups();
        return squaresBetween / degreesOfFreedomBetween();
    }

    /**
     * MSW, the pooled variance of a value around its group.
     *
     * @throws IllegalStateException for one value in every group
     */
    public double meanSquareWithin() {
        if (degreesOfFreedomWithin() == 0) {
            throw new IllegalStateException("The variance within needs a group with 2 values, found 1 in each.");
        }
        return squaresWithin / degreesOfFreedomWithin();
    }

    /** The variance between groups, 0 where its estimate is negative. */
    public double varianceBetween() {
        return Math.max(0, (meanSquareBetween() - meanSquareWithin()) / typicalGroupSize);
    }

    private void requireGroups() {
        if (groupCount() < 2) {
            throw new IllegalStateException("The variance between needs at least 2 groups, found 1.");
        }
    }
}
