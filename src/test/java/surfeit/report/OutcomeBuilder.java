package surfeit.report;

import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Verdict;

/** Puts an invented outcome together; what a test does not name is absent. */
public final class OutcomeBuilder {
    private final Verdict verdict;
    private final double mean;
    private final double uncertainty;
    private double low;
    private double high;
    private Optional<Estimate> factor = Optional.empty();
    private Estimate difference = new Estimate(0.1, 0.05, 0.15);
    private OptionalDouble p = OptionalDouble.empty();
    private OptionalDouble pEquivalence = OptionalDouble.empty();
    private OptionalDouble notMoreThan = OptionalDouble.empty();
    private boolean beyondMargin;
    private boolean smallShift;
    private boolean spotsAgree;
    private Optional<Reason> reason = Optional.empty();
    private Optional<Verdict> lean = Optional.empty();

    private OutcomeBuilder(Verdict verdict, double mean, double uncertainty) {
        this.verdict = verdict;
        this.mean = mean;
        this.uncertainty = uncertainty;
        low = mean - 2 * uncertainty;
        high = mean + 2 * uncertainty;
    }

    public static OutcomeBuilder enriched(double mean, double uncertainty) {
        return new OutcomeBuilder(Verdict.ENRICHED, mean, uncertainty);
    }

    public static OutcomeBuilder depleted(double mean, double uncertainty) {
        return new OutcomeBuilder(Verdict.DEPLETED, mean, uncertainty);
    }

    public static OutcomeBuilder consistent(double mean, double uncertainty) {
        return new OutcomeBuilder(Verdict.CONSISTENT, mean, uncertainty);
    }

    public static OutcomeBuilder inconclusive(double mean, double uncertainty) {
        return new OutcomeBuilder(Verdict.INCONCLUSIVE, mean, uncertainty);
    }

    public OutcomeBuilder factor(double value, double low, double high) {
        factor = Optional.of(new Estimate(value, low, high));
        return this;
    }

    public OutcomeBuilder interval(double low, double high) {
        this.low = low;
        this.high = high;
        return this;
    }

    public OutcomeBuilder difference(double value, double low, double high) {
        difference = new Estimate(value, low, high);
        return this;
    }

    public OutcomeBuilder p(double adjusted) {
        p = OptionalDouble.of(adjusted);
        return this;
    }

    public OutcomeBuilder pEquivalence(double value) {
        pEquivalence = OptionalDouble.of(value);
        return this;
    }

    public OutcomeBuilder notMoreThan(double oddsRatio) {
        notMoreThan = OptionalDouble.of(oddsRatio);
        return this;
    }

    public OutcomeBuilder beyondMargin() {
        beyondMargin = true;
        return this;
    }

    public OutcomeBuilder smallShift() {
        smallShift = true;
        return this;
    }

    public OutcomeBuilder spotsAgree() {
        spotsAgree = true;
        return this;
    }

    public OutcomeBuilder because(Reason reason) {
        this.reason = Optional.of(reason);
        return this;
    }

    public OutcomeBuilder lean(Verdict direction) {
        lean = Optional.of(direction);
        return this;
    }

    public Outcome build() {
        OptionalDouble confidence = verdict == Verdict.INCONCLUSIVE ? OptionalDouble.empty()
            : OptionalDouble.of(1 - (verdict == Verdict.CONSISTENT ? pEquivalence : p).orElse(0.01));
        return new Outcome(verdict, mean, low, high, uncertainty, uncertainty * 0.6, uncertainty * 0.8,
            OptionalDouble.of(3), factor,
            difference, Optional.of(new Estimate(2, 1, Double.POSITIVE_INFINITY)), p, p, pEquivalence, confidence,
            notMoreThan,
            beyondMargin, smallShift, spotsAgree, reason, lean, "logit", "scatter of particles");
    }
}
