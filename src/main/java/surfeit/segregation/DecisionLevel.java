package surfeit.segregation;

import surfeit.statistics.NormalDistribution;

/**
 * Tells early that a p value lies above the risk of a decision, where only the decision is asked and not the value.
 *
 * <p>T has heavier tails than the normal distribution for every number of degrees of freedom:
 * {@code P(|T| > x) = E[P(|Z| > x sqrt W)]} with W = chi square over its degrees of freedom, of mean 1, and the
 * probability inside is convex in W (Jensen's inequality). So below the normal limit z no t test reaches alpha. Holm's
 * adjustment orders its p values: one above alpha changes no decision on those at or below it.
 *
 * @param alpha    risk of the decision
 * @param twoSided z that leaves alpha outside on both sides together; 0 asks for every value
 * @param oneSided z that leaves alpha outside on one side
 */
record DecisionLevel(double alpha, double twoSided, double oneSided) {
    /** Every p value as it is. */
    static final DecisionLevel EVERY_VALUE = new DecisionLevel(1, 0, Double.NEGATIVE_INFINITY);

    /** p values above alpha may be given as 1. */
    static DecisionLevel of(double alpha) {
        return new DecisionLevel(alpha, NormalDistribution.quantile(1 - alpha / 2), NormalDistribution.quantile(1 - alpha));
    }

    /** True where a distance d with this standard uncertainty surely has a two-sided p above alpha. */
    boolean surelyAboveTwoSided(double d, double uncertainty) {
        return Math.abs(d) < twoSided * uncertainty;
    }

    /** True where "d is above 0" surely has a one-sided p above alpha. */
    boolean surelyAboveOneSided(double d, double uncertainty) {
        return d < oneSided * uncertainty;
    }
}
