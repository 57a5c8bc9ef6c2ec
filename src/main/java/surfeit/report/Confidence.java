package surfeit.report;

import java.util.OptionalDouble;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Verdict;

/**
 * How sure a verdict is, said as what would happen if it were wrong.
 *
 * <p>A p value bounds how often chance and calibration error alone make a result this strong; it is not the probability
 * that the verdict is right, which depends on how many samples are truly nominal. So no sentence says "95 % sure".
 */
public final class Confidence {
    /** What stands beside the means and factors of every answer. */
    static final String FIGURES = "u is the combined standard uncertainty; factors carry a 95 % interval.";
    /** What the field {@code confidence} of an answer means; printed with every answer. */
    public static final String MEANING = "Confidence is one minus the p value that carries the verdict. Enriched or "
    + "depleted: if nothing differed, a result this strong would appear in at most 1 in N samples, with N = 1 / (1 - "
    + "confidence), counted over all elements and groups of the answer together. Consistent: if the shift reached the "
    + "margin, a result this close to nominal would appear in at most 1 in N samples. It is not the chance that the "
    + "verdict is right: the more of your samples are truly nominal, the more of the flags are false. Inconclusive "
    + "verdicts carry none.";

    private Confidence() {
    }

    /** {@code 1 in 830} for a verdict that carries one; empty text for an inconclusive one. */
    static String oneIn(Outcome outcome) {
        OptionalDouble p = pValue(outcome);
        return p.isPresent() ? "1 in " + Digits.oneIn(p.getAsDouble()) : "";
    }

    /** The p value behind the verdict: adjusted for a flag, that of the equivalence test for consistent. */
    static OptionalDouble pValue(Outcome outcome) {
        if (outcome.verdict() == Verdict.INCONCLUSIVE) {
            return OptionalDouble.empty();
        }
        OptionalDouble p = outcome.verdict() == Verdict.CONSISTENT ? outcome.pEquivalence() : outcome.pAdjusted();
        return p.isPresent() || outcome.confidence().isEmpty() ? p
            : OptionalDouble.of(1 - outcome.confidence().getAsDouble());
    }

    /** How often a flag this strong appears where nothing differs. */
    static String ofFlag(double pAdjusted) {
        return "If nothing differed, a result this strong would appear in at most 1 in " + Digits.oneIn(pAdjusted)
            + " samples.";
    }

    /** The same for several flags, by the weakest. */
    static String ofWeakestFlag(double pAdjusted) {
        return "If nothing differed, even the weakest of these would appear in at most 1 in " + Digits.oneIn(pAdjusted)
            + " samples.";
    }

    /** How often data this close to nominal appear where the shift reaches the margin. */
    static String ofConsistent(double pEquivalence) {
        return "If the shift reached that margin, a result this close to nominal would appear in at most 1 in "
            + Digits.oneIn(pEquivalence) + " samples.";
    }
}
