package surfeit.statistics;

import java.util.stream.IntStream;

/**
 * How far apart two sets of particle means lie, and the random error of that difference.
 *
 * <p>Paired where both sets come from the same particles: what the particles have in common cancels. Otherwise Welch's
 * comparison, which does not ask for equal scatter. An error shared by both sets is joined by {@link CombinedError}.
 */
public record MeanDifference(double estimate, RandomPart random) {

    public MeanDifference {
        if (!Double.isFinite(estimate)) {
            throw new IllegalArgumentException("Difference of means is " + estimate + ", must be finite.");
        }
    }

    /**
     * Mean of a minus mean of b, {@code s² = s_a²/n_a + s_b²/n_b}, degrees of freedom after {@link WelchSatterthwaite}.
     * Source: Welch, Biometrika 34 (1947) 28 (from memory).
     *
     * @throws IllegalArgumentException for fewer than two values on a side
     */
    public static MeanDifference unpaired(double[] a, double[] b) {
        requireTwo(a.length);
        requireTwo(b.length);
        return new MeanDifference(Moments.of(a).mean() - Moments.of(b).mean(),
            RandomPart.ofMean(a).plus(RandomPart.ofMean(b)));
    }

    /**
     * The mean of the differences a - b in each particle, {@code s = sd/√k} with k - 1 degrees of freedom.
     *
     * @throws IllegalArgumentException for fewer than two pairs or unequal lengths
     */
    public static MeanDifference paired(double[] a, double[] b) {
        if (a.length != b.length) {
            throw new IllegalArgumentException("Pairs need equal lengths, found " + a.length + " and "
                + b.length + ".");
        }
        requireTwo(a.length);
        double[] differences = IntStream.range(0, a.length).mapToDouble(i -> a[i] - b[i]).toArray();
        return new MeanDifference(Moments.of(differences).mean(), RandomPart.ofMean(differences));
    }

    /** Student's t: the difference in standard errors. Infinite or NaN where the standard error is 0. */
    public double t() {
        return estimate / random.standardError();
    }

    /** p of "no difference", two-sided, random error only. */
    public double twoSidedP() {
        return CombinedError.twoSidedP(estimate, random, 0);
    }

    /** The interval is the estimate ± this, random error only. */
    public double halfWidth(double confidence) {
        return CombinedError.halfWidth(random, 0, confidence);
    }

    private static void requireTwo(int count) {
        if (count < 2) {
            throw new IllegalArgumentException("Scatter needs at least 2 values a side, found " + count + ".");
        }
    }
}
