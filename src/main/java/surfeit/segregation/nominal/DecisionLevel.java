package surfeit.segregation.nominal;

import surfeit.statistics.CombinedError;
import surfeit.statistics.NormalDistribution;

/**
 * Tells early that a p value lies above the risk of a decision, where only the decision is asked and not the value.
 *
 * <p>T has heavier tails than the normal distribution for every number of degrees of freedom:
 * {@code P(|T| > x) = E[P(|Z| > x sqrt W)]} with W = chi square over its degrees of freedom, of mean 1, and the
 * probability inside is convex in W (Jensen's inequality). So below the normal limit z no t test reaches alpha; nor does
 * it while {@code sqrt(df ln(1 + t^2 / df))} is below z, which is never less than the z of as small a tail (Wallace, Ann.
 * Math. Statist. 30 (1959) 1121, from memory). Holm's adjustment orders its p values: one above alpha changes no decision
 * on those at or below it.
 *
 * @param alpha    risk of the decision
 * @param twoSided z that leaves alpha outside on both sides together; 0 asks for every value
 * @param oneSided z that leaves alpha outside on one side
 */
public record DecisionLevel(double alpha, double twoSided, double oneSided) {
    /** With more degrees of freedom both limits agree. */
    private static final double MOST_FREEDOM = 1e6;
    /** Every p value as it is. */
    public static final DecisionLevel EVERY_VALUE = new DecisionLevel(1, 0, Double.NEGATIVE_INFINITY);

    /** p values above alpha may be given as 1. */
    public static DecisionLevel of(double alpha) {
        return new DecisionLevel(alpha, NormalDistribution.quantile(1 - alpha / 2), NormalDistribution.quantile(1 - alpha));
    }

    /** Two-sided p values above this one may be given as 1; it lies above 0. */
    public static DecisionLevel ofTwoSided(double p) {
        return new DecisionLevel(p, -NormalDistribution.quantile(p / 2), Double.NEGATIVE_INFINITY);
    }

    /** True where a distance d surely has a two-sided p above alpha; s, df and u as in {@link CombinedError}. */
    public boolean surelyAboveTwoSided(double d, double s, double df, double u) {
        if (twoSided == 0) {
            return false;
        }
        double t = Math.abs(d) / Math.hypot(s, u);
        return t < twoSided || s > 0 && (isBelow(Math.abs(d) / s, df)
            || isBelow(t, CombinedError.degreesOfFreedom(s, df, u)));
    }

    private boolean isBelow(double t, double df) {
        return df < MOST_FREEDOM && df * Math.log1p(t * t / df) < twoSided * twoSided;
    }

    /** True where "d is above 0" surely has a one-sided p above alpha. */
    boolean surelyAboveOneSided(double d, double uncertainty) {
        return d < oneSided * uncertainty;
    }
}
