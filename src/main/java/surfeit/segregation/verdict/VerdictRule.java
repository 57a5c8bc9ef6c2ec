package surfeit.segregation.verdict;

import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.nominal.BelowLimit;
import surfeit.segregation.nominal.NominalTest;
import surfeit.statistics.NormalDistribution;
import surfeit.statistics.RandomPart;
import surfeit.statistics.StudentT;

/**
 * Turns a test and its adjusted p value into a verdict, its reason and its numbers.
 *
 * <pre>
 *     no random part                       inconclusive
 *     p of equivalence at most alpha       consistent
 *     adjusted p at most alpha             enriched or depleted
 *     else                                 inconclusive, with a reason
 * </pre>
 * The reason: calibration where 1.645 u reaches the margin, scatter where t95(df) s does, both, or neither (between).
 */
record VerdictRule(double alpha, double margin) {
    private static final double ONE_SIDED_95 = NormalDistribution.quantile(0.95);
    /** From here on a direction is worth naming while nothing is shown. Settled by simulation on invented data. */
    private static final double LEAN = 0.9;

    Verdict verdict(NominalTest test, double pAdjusted) {
        if (test.parts().isEmpty()) {
            return Verdict.INCONCLUSIVE;
        }
        if (test.pEquivalence() <= alpha) {
            return Verdict.CONSISTENT;
        }
        if (pAdjusted <= alpha && test.direction() != 0) {
            return word(test.direction());
        }
        return Verdict.INCONCLUSIVE;
    }

    Optional<Reason> reason(NominalTest test, Verdict verdict) {
        if (verdict != Verdict.INCONCLUSIVE) {
            return Optional.empty();
        }
        if (test.parts().isEmpty()) {
            return Optional.of(Reason.NO_REPEAT_AND_NO_SIGMA);
        }
        if (test.scale().equals(BelowLimit.SCALE)) {
            return Optional.of(test.theta() < 0 ? Reason.CALIBRATION : Reason.LIMIT_ABOVE_NOMINAL);
        }
        double u = Double.isNaN(test.uTheta()) ? 0 : test.uTheta();
        double t = 0;
        for (RandomPart part : test.parts()) {
            t = Math.max(t, StudentT.quantile(0.95, part.degreesOfFreedom()));
        }
        boolean calibration = ONE_SIDED_95 * u >= margin;
        boolean scatter = Double.isNaN(test.sTheta()) || t * test.sTheta() >= margin;
        return Optional.of(calibration && scatter ? Reason.CALIBRATION_AND_SCATTER
            : calibration ? Reason.CALIBRATION : scatter ? Reason.SCATTER : Reason.BETWEEN);
    }

    /** The verdict with every number that entered it. */
    Outcome outcome(NominalTest test, double pAdjusted, NominalTest.Limits limits, double sharedLinear, String source) {
        Verdict verdict = verdict(test, pAdjusted);
        boolean tested = !test.parts().isEmpty() && !Double.isNaN(test.p());
        boolean inconclusive = verdict == Verdict.INCONCLUSIVE;
        RandomPart largest = largest(test);
        double random = largest.standardError();
        OptionalDouble nearest = test.nearestLimit(limits);
        return new Outcome(verdict, test.mean(), test.low(), test.high(), Math.hypot(random, sharedLinear), random,
            sharedLinear, test.parts().isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(largest.degreesOfFreedom()),
            factor(test, nearest), difference(test, limits, nearest),
            odds(test, nearest), tested ? OptionalDouble.of(test.p()) : OptionalDouble.empty(),
            tested ? OptionalDouble.of(pAdjusted) : OptionalDouble.empty(),
            tested ? OptionalDouble.of(test.pEquivalence()) : OptionalDouble.empty(),
            inconclusive ? OptionalDouble.empty()
                : OptionalDouble.of(1 - (verdict == Verdict.CONSISTENT ? test.pEquivalence() : pAdjusted)),
            !tested || Double.isInfinite(test.notMoreThan()) ? OptionalDouble.empty() : OptionalDouble.of(test.notMoreThan()),
            tested && beyondMargin(test, limits), verdict == Verdict.CONSISTENT && pAdjusted <= alpha,
            inconclusive && tested && test.direction() != 0 && test.pRandom() <= alpha, reason(test, verdict),
            lean(test, verdict),
            test.scale(), source);
    }

    private Optional<Verdict> lean(NominalTest test, Verdict verdict) {
        boolean leans = verdict == Verdict.INCONCLUSIVE && !test.parts().isEmpty() && test.direction() != 0
            && 1 - test.p() / 2 >= LEAN;
        return leans ? Optional.of(word(test.direction())) : Optional.empty();
    }

    private boolean beyondMargin(NominalTest test, NominalTest.Limits limits) {
        boolean above = limits.high() < 1 && test.low() > NominalTest.expit(NominalTest.logit(limits.high()) + margin);
        boolean below = limits.low() > 0 && test.high() < NominalTest.expit(NominalTest.logit(limits.low()) - margin);
        return above || below;
    }

    private static Verdict word(int direction) {
        return direction > 0 ? Verdict.ENRICHED : Verdict.DEPLETED;
    }

    /** The random part that decides the uncertainty; none is one of size 0. */
    private static RandomPart largest(NominalTest test) {
        RandomPart largest = RandomPart.known(0);
        for (int i = 0; i < test.parts().size(); i++) {
            RandomPart part = test.parts().get(i);
            largest = i == 0 || part.standardError() > largest.standardError() ? part : largest;
        }
        return largest;
    }

    private static Optional<Estimate> factor(NominalTest test, OptionalDouble nearest) {
        return nearest.isEmpty() || nearest.getAsDouble() <= 0 ? Optional.empty()
            : Optional.of(new Estimate(Math.max(test.mean(), 0) / nearest.getAsDouble(), test.low() / nearest.getAsDouble(),
                test.high() / nearest.getAsDouble()));
    }

    private static Estimate difference(NominalTest test, NominalTest.Limits limits, OptionalDouble nearest) {
        if (nearest.isEmpty()) {
            return new Estimate(0, Math.min(test.low() - limits.low(), 0), Math.max(test.high() - limits.high(), 0));
        }
        double at = nearest.getAsDouble();
        return new Estimate(test.mean() - at, test.low() - at, test.high() - at);
    }

    private static Optional<Estimate> odds(NominalTest test, OptionalDouble nearest) {
        if (nearest.isEmpty() || !(nearest.getAsDouble() > 0 && nearest.getAsDouble() < 1) || test.mean() <= 0
            || test.mean() >= 1) {
            return Optional.empty();
        }
        double odds = nearest.getAsDouble() / (1 - nearest.getAsDouble());
        return Optional.of(new Estimate(test.mean() / (1 - test.mean()) / odds, test.low() / (1 - test.low()) / odds,
            test.high() / (1 - test.high()) / odds));
    }
}
