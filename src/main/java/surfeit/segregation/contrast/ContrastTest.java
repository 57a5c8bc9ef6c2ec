package surfeit.segregation.contrast;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.nominal.NominalTrial;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.RandomLadder;
import surfeit.segregation.uncertainty.ReferenceCorrection;
import surfeit.segregation.uncertainty.ReferenceScatter;
import surfeit.segregation.uncertainty.SharedDifference;
import surfeit.statistics.CombinedError;
import surfeit.statistics.RandomPart;

/**
 * One element of group A against the same of group B.
 *
 * <pre>
 *     theta = logit m_A - logit m_B
 *     paired (three or more particles in common):  v_p = A_p / (m_A (1 - m_A)) - B_p / (m_B (1 - m_B)),
 *                                                  s = sd(v) / sqrt k,  df = k - 1
 *     otherwise (Welch):                           s^2 = s_A^2 + s_B^2,  df after Satterthwaite
 *     u:                                           {@link SharedDifference}
 * </pre>
 * Each group's own relative error enters u: with one group's for both the coverage falls to 17 to 65 % for a minor
 * element. Where a mean is not above 0, or scatter or additive floor are large beside the smaller part on either side,
 * the linear difference counts too (the larger p), and equivalence is not offered. What reference spots scattered
 * joins s. Settled by simulation on invented data: 94.6 to 95.5 % coverage paired, 93.0 to 96.5 % of
 * groups.
 *
 * @param reason present where nothing tells the scatter of one side
 */
record ContrastTest(double meanA, double meanB, double theta, double s, double df, double u, double halfWidth, double p,
                    double pEquivalence, double linearHalfWidth, String scale, int direction, Optional<Reason> reason) {
    /** One side: its sums, and the correction by reference spots that went into them, if any. */
    record Side(GroupSums sums, Optional<ReferenceCorrection> reference) {

        static Side uncorrected(GroupSums sums) {
            return new Side(sums, Optional.empty());
        }

        /** Scatter of the reference spots, as an error of the mean fraction over {@code q}. */
        private Optional<RandomPart> scatter(int element, double q) {
            double m = sums.mean()[element];
            return reference.flatMap(correction -> ReferenceScatter.of(correction, sums, sums.mean(), element))
                .map(part -> part.times(m * (1 - m) / q));
        }
    }

    static ContrastTest of(Side a, Side b, int element, boolean paired, SharedDifference shared, double margin) {
        double mA = a.sums.mean()[element];
        double mB = b.sums.mean()[element];
        int direction = (int) Math.signum(mA - mB);
        Optional<RandomPart> linear = random(a, b, element, paired, 1, 1);
        if (linear.isEmpty()) {
            return new ContrastTest(mA, mB, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, 1,
                Double.POSITIVE_INFINITY, "none", direction, Optional.of(Reason.NO_REPEAT_AND_NO_SIGMA));
        }
        double edgeA = Math.min(mA, 1 - mA);
        double edgeB = Math.min(mB, 1 - mB);
        double edge = Math.min(edgeA, edgeB);
        boolean hull = edge <= 0
            || Math.max(largest(a.sums, element) / edgeA, largest(b.sums, element) / edgeB) >= NominalTrial.HULL_RANDOM
            || Math.max(shared.floorA()[element] / edgeA, shared.floorB()[element] / edgeB) >= NominalTrial.HULL_FLOOR;
        double theta = Double.NaN;
        double p = 0;
        double pEquivalence = 0;
        double u = Double.NaN;
        double h = Double.NaN;
        RandomPart part = linear.get();
        if (edge > 0) {
            double qA = mA * (1 - mA);
            double qB = mB * (1 - mB);
            part = random(a, b, element, paired, qA, qB).orElseThrow();
            u = shared.uncertainty(element, qA, qB);
            theta = NominalTest.logit(mA) - NominalTest.logit(mB);
            p = CombinedError.twoSidedP(theta, part, u);
            h = CombinedError.halfWidth(part, u, 0.95);
            pEquivalence = Math.max(CombinedError.oneSidedP(theta + margin, part, u),
                CombinedError.oneSidedP(margin - theta, part, u));
        }
        double uLinear = shared.uncertainty(element, 1, 1);
        if (hull) {
            p = Math.max(p, CombinedError.twoSidedP(mA - mB, linear.get(), uLinear));
            pEquivalence = 1;
        }
        String scale = !hull ? "logit" : edge > 0 ? "hull" : "linear";
        return new ContrastTest(mA, mB, theta, part.standardError(), part.degreesOfFreedom(), edge > 0 ? u : uLinear, h,
            p, pEquivalence, CombinedError.halfWidth(linear.get(), uLinear, 0.95), scale, direction, Optional.empty());
    }

    /** The same pair with values below limits filled otherwise; a difference counts only where both agree. */
    ContrastTest join(ContrastTest other) {
        if (reason.isPresent() || other.reason.isPresent()) {
            return reason.isPresent() ? this : other;
        }
        boolean same = direction == other.direction && direction != 0;
        return new ContrastTest((meanA + other.meanA) / 2, (meanB + other.meanB) / 2, (theta + other.theta) / 2,
            Math.max(s, other.s), Math.min(df, other.df), Math.max(u, other.u),
            Math.max(halfWidth, other.halfWidth) + Math.abs(theta - other.theta) / 2, same ? Math.max(p, other.p) : 1,
            Math.max(pEquivalence, other.pEquivalence), Math.max(linearHalfWidth, other.linearHalfWidth)
                + Math.abs(meanA - meanB - other.meanA + other.meanB) / 2, scale.equals(other.scale) ? scale : "hull",
            same ? direction : 0, Optional.empty());
    }

    private static double largest(GroupSums sums, int element) {
        return RandomLadder.population(sums, element, sums.mean()[element]).parts().stream()
            .mapToDouble(RandomPart::standardError).max().orElse(0);
    }

    private static Optional<RandomPart> random(Side a, Side b, int element, boolean paired, double qA, double qB) {
        Optional<RandomPart> scatter = paired ? Optional.of(ofPairs(a.sums, b.sums, element, qA, qB))
            : ofSides(a.sums, b.sums, element, qA, qB);
        if (a.reference.isEmpty() && b.reference.isEmpty()) {
            return scatter;
        }
        Optional<RandomPart> references = a.scatter(element, qA)
            .flatMap(own -> b.scatter(element, qB).map(own::plus));
        return scatter.flatMap(part -> references.map(part::plus));
    }

    private static RandomPart ofPairs(GroupSums a, GroupSums b, int element, double qA, double qB) {
        int k = a.particleCount();
        double[] v = new double[k];
        for (int p = 0; p < k; p++) {
            v[p] = a.particles().get(p).centre()[element] / qA - b.particles().get(p).centre()[element] / qB;
        }
        double step = Math.hypot(a.roundingStep()[element] / qA, b.roundingStep()[element] / qB) / Math.sqrt(12);
        return RandomPart.ofMean(v).atLeast(step);
    }

    private static Optional<RandomPart> ofSides(GroupSums a, GroupSums b, int element, double qA, double qB) {
        Optional<RandomPart> sideA = side(a, element);
        Optional<RandomPart> sideB = side(b, element);
        return sideA.isEmpty() || sideB.isEmpty() ? Optional.empty()
            : Optional.of(sideA.get().times(1 / qA).plus(sideB.get().times(1 / qB)));
    }

    private static Optional<RandomPart> side(GroupSums sums, int element) {
        List<RandomPart> parts = RandomLadder.population(sums, element, sums.mean()[element]).parts();
        return parts.stream().max(Comparator.comparingDouble(RandomPart::standardError));
    }
}
