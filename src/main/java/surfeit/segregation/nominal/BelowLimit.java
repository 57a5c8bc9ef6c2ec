package surfeit.segregation.nominal;

import java.util.List;
import surfeit.statistics.NormalDistribution;
import surfeit.statistics.RandomPart;

/**
 * An element that every spot of a group has below its limit: a bound in place of a t test.
 *
 * <pre>
 *     C &lt;= L exp(1.645 r0)            p = 2 Phi(-(ln C0 - ln L) / r0)  where L &lt; C0, else 1
 * </pre>
 * L the limit as a closed atomic fraction (the largest of the spots), C0 the (lower) nominal limit, r0 the relative
 * standard uncertainty of the accuracy class; theta is the distance of L from C0. The p enters the adjustment with those
 * of the other elements. Where the nominal may be zero ("at most x") nothing can be depleted; there it is shown to be in
 * order if {@code Phi(-(ln H - ln L) / r0)} is at most alpha, H the upper limit with the margin on it, and theta counts
 * from the upper limit.
 */
public final class BelowLimit {
    /** Quantile of the normal distribution for a one-sided bound at 95 %. */
    private static final double ONE_SIDED_95 = NormalDistribution.quantile(0.95);
    /** What {@link NominalTest#scale} says for such an element. */
    public static final String SCALE = "limit";

    private BelowLimit() {
    }

    static double bound(double limit, double relative) {
        return limit * Math.exp(ONE_SIDED_95 * relative);
    }

    static double pValue(double limit, double nominal, double relative) {
        if (!(limit < nominal) || relative == 0) {
            return 1;
        }
        return NormalDistribution.twoSidedP((Math.log(nominal) - Math.log(limit)) / relative);
    }

    public static NominalTest test(double limit, NominalTest.Limits nominal, double relative, double margin) {
        double bound = Math.min(bound(limit, relative), 1);
        double beyond = NominalTest.logit(bound) - NominalTest.logit(nominal.high());
        boolean mayBeZero = nominal.low() <= 0;
        double inOrder = mayBeZero ? pInOrder(limit, NominalTest.expit(NominalTest.logit(nominal.high()) + margin), relative) : 1;
        double theta = NominalTest.logit(limit) - NominalTest.logit(mayBeZero ? nominal.high() : nominal.low());
        return new NominalTest(0, theta, Double.NaN, Double.NaN, SCALE, pValue(limit, nominal.low(), relative), inOrder,
            Double.NaN, 0, bound, mayBeZero ? Math.exp(Math.max(beyond, 0)) : Double.POSITIVE_INFINITY,
            limit < nominal.low() ? -1 : 0, List.of(RandomPart.known(0)));
    }

    private static double pInOrder(double limit, double most, double relative) {
        return relative == 0 ? limit <= most ? 0 : 1 : NormalDistribution.survival((Math.log(most) - Math.log(limit)) / relative);
    }
}
