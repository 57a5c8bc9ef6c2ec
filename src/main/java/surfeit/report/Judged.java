package surfeit.report;

import java.util.Optional;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Verdict;

/**
 * One element of a group in the scope that is spoken about.
 *
 * @param finding   the element's finding
 * @param outcome   its outcome in that scope
 * @param spotCount spots of the group
 */
public record Judged(ElementFinding finding, Outcome outcome, long spotCount) {
    /** Standard uncertainties from which on nobody says that calibration may have made a shift. Judgement. */
    private static final double BEYOND_CALIBRATION = 4;

    public String symbol() {
        return finding.element().symbol();
    }

    Verdict verdict() {
        return outcome.verdict();
    }

    boolean isFlagged() {
        return verdict() == Verdict.ENRICHED || verdict() == Verdict.DEPLETED;
    }

    boolean isInconclusive() {
        return verdict() == Verdict.INCONCLUSIVE;
    }

    /** True where no spot shows the element above its limit: there is no mean then, only a bound. */
    public boolean isBelowLimitEverywhere() {
        return finding.belowLimitCount() > 0 && finding.belowLimitCount() >= spotCount
            && finding.detectionLimit().isPresent();
    }

    /** True where nothing tells the random error, so that the interval holds the calibration error only. */
    boolean lacksScatter() {
        return outcome.reason().equals(Optional.of(Reason.NO_REPEAT_AND_NO_SIGMA));
    }

    /** True for a shift that the calibration error alone could not make. */
    boolean isBeyondCalibration() {
        return Math.abs(outcome.difference().value()) > BEYOND_CALIBRATION * outcome.uncertaintyShared();
    }

    public boolean isRange() {
        return finding.nominalLow() < finding.nominalHigh();
    }

    double nominalMiddle() {
        return (finding.nominalLow() + finding.nominalHigh()) / 2;
    }

    /** The verdict, with the lean of an inconclusive one: {@code inconclusive, leans enriched}. */
    public String verdictWords() {
        return verdict().word() + outcome.lean().map(lean -> ", leans " + lean.word()).orElse("");
    }

    /** How much: the factor with its interval, or the mean where a factor says nothing. */
    String size(Signs signs) {
        if (isBelowLimitEverywhere()) {
            String everywhere = spotCount == 1 ? "the one spot" : "all " + spotCount + " spots";
            return "below its limit of " + limit() + " in " + everywhere + " (nominal " + nominal() + ")";
        }
        if (hasFactor()) {
            return Digits.factor(outcome.enrichmentFactor().orElseThrow(), signs)
                + (isRange() ? " of " + nearestLimit() : "");
        }
        if (outcome.mean() <= 0) {
            return "not above zero, at most " + Digits.upperBound(outcome.high() * 100) + " at% (nominal " + nominal() + ")";
        }
        return Digits.atomicPercentInterval(outcome.mean(), outcome.low(), outcome.high())
            + (isInsideRange() ? ", inside its range " + nominal() : "");
    }

    public boolean hasFactor() {
        return outcome.enrichmentFactor().map(Estimate::value)
            .filter(value -> value > 0 && Double.isFinite(value)).isPresent();
    }

    /** The nominal with its unit: {@code 39.9 at%}, {@code 16 to 18 at%}. */
    String nominal() {
        return nominalNumber() + " at%";
    }

    /** What of the nominal a value below its limit would have to lie below, or may not exceed where it may be zero. */
    String nominalToShow() {
        boolean mayBeZero = finding.nominalLow() <= 0;
        return (!isRange() ? "nominal, " : mayBeZero ? "the upper limit of nominal, " : "the lower limit of nominal, ")
            + Digits.nominalPercent(mayBeZero ? finding.nominalHigh() : finding.nominalLow()) + " at%";
    }

    public String nominalNumber() {
        String low = Digits.nominalPercent(finding.nominalLow());
        return isRange() ? low + " to " + Digits.nominalPercent(finding.nominalHigh()) : low;
    }

    /** The detection limit with its unit, {@code 0.3 at% (assumed)}. */
    public String limit() {
        return Digits.nominalPercent(finding.detectionLimit().orElseThrow()) + " at%"
            + (finding.limitAssumed() ? " (assumed)" : "");
    }

    private boolean isInsideRange() {
        return isRange() && outcome.mean() >= finding.nominalLow() && outcome.mean() <= finding.nominalHigh();
    }

    private String nearestLimit() {
        boolean above = outcome.mean() > finding.nominalHigh();
        return (above ? "its upper limit, " : "its lower limit, ")
            + Digits.nominalPercent(above ? finding.nominalHigh() : finding.nominalLow()) + " at%";
    }
}
