package surfeit.segregation.answer;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One element of one group tested against its nominal in one scope; every number that entered the verdict is here.
 *
 * <p>Fractions are atomic, 0..1. Confidence intervals are of 95 %, not adjusted for the number of tests.
 *
 * @param verdict             what the data say
 * @param mean                mean fraction of the group
 * @param low                 lower end of the interval of the mean
 * @param high                upper end
 * @param uncertainty         combined standard uncertainty of the mean, as a fraction
 * @param uncertaintyRandom   its part from scatter or counting
 * @param uncertaintyShared   its part from the calibration error shared by all spots (and the nominal's tolerance)
 * @param degreesOfFreedom    of the random part; empty where there is none, infinite for counting statistics
 * @param enrichmentFactor    mean over nominal (over the nearest limit of a range; empty inside one and for nominal 0)
 * @param difference          mean less nominal, as a fraction
 * @param oddsRatio           odds of the mean over the odds of nominal; empty where the mean is not inside 0..1
 * @param pValue              against "no shift"; empty where there is nothing to test
 * @param pAdjusted           the same after adjustment over the answer
 * @param pEquivalence        against "the shift reaches the margin"
 * @param confidence          one minus the p value that carries the verdict; empty for inconclusive
 * @param notMoreThanFactor   smallest margin, as an odds ratio, these data support; empty where unbounded
 * @param beyondMargin        true where the whole interval lies outside the margin
 * @param smallShiftDetected  true for a consistent verdict whose shift is nevertheless significant
 * @param spotsAgreeOnShift   true where the random part alone would show the shift
 * @param reason              why it is inconclusive
 * @param lean                direction the data lean to while inconclusive
 * @param scale               scale the test was made on: logit, hull or linear
 * @param randomUncertainty   where the random part comes from, in words
 */
public record Outcome(Verdict verdict, double mean, double low, double high, double uncertainty,
                      double uncertaintyRandom, double uncertaintyShared, OptionalDouble degreesOfFreedom,
                      Optional<Estimate> enrichmentFactor, Estimate difference, Optional<Estimate> oddsRatio,
                      OptionalDouble pValue, OptionalDouble pAdjusted, OptionalDouble pEquivalence,
                      OptionalDouble confidence, OptionalDouble notMoreThanFactor, boolean beyondMargin,
                      boolean smallShiftDetected, boolean spotsAgreeOnShift, Optional<Reason> reason,
                      Optional<Verdict> lean, String scale, String randomUncertainty) {
}
