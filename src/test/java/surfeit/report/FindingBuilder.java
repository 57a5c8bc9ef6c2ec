package surfeit.report;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.Outcome;

/** Puts an invented finding of one element together. */
public final class FindingBuilder {
    private final Element element;
    private final double nominalLow;
    private final double nominalHigh;
    private final Outcome outcome;
    private Optional<Outcome> these = Optional.empty();
    private List<String> fragileWithout = List.of();
    private Optional<ElementFinding.SeenOn> seenOn = Optional.empty();
    private long belowLimit;
    private OptionalDouble limit = OptionalDouble.empty();
    private boolean assumed;
    private Optional<String> nextStep = Optional.empty();

    private FindingBuilder(String symbol, double nominalLow, double nominalHigh, Outcome outcome) {
        this.element = Element.of(symbol);
        this.nominalLow = nominalLow;
        this.nominalHigh = nominalHigh;
        this.outcome = outcome;
    }

    /** Against a point of the nominal. */
    public static FindingBuilder finding(String symbol, double nominal, OutcomeBuilder outcome) {
        return new FindingBuilder(symbol, nominal, nominal, outcome.build());
    }

    /** Against a range of the nominal. */
    public static FindingBuilder finding(String symbol, double low, double high, OutcomeBuilder outcome) {
        return new FindingBuilder(symbol, low, high, outcome.build());
    }

    public FindingBuilder these(OutcomeBuilder builder) {
        these = Optional.of(builder.build());
        return this;
    }

    public FindingBuilder fragileWithout(String... particles) {
        fragileWithout = List.of(particles);
        return this;
    }

    public FindingBuilder seenOn(int particles, int of) {
        seenOn = Optional.of(new ElementFinding.SeenOn(particles, of, of));
        return this;
    }

    /** The same where some particles have one spot only, without an uncertainty. */
    public FindingBuilder seenOn(int particles, int tested, int of) {
        seenOn = Optional.of(new ElementFinding.SeenOn(particles, tested, of));
        return this;
    }

    public FindingBuilder belowLimit(long spots, double limitFraction, boolean assumed) {
        belowLimit = spots;
        limit = OptionalDouble.of(limitFraction);
        this.assumed = assumed;
        return this;
    }

    public FindingBuilder nextStep(String text) {
        nextStep = Optional.of(text);
        return this;
    }

    public ElementFinding build() {
        return new ElementFinding(element, nominalLow, nominalHigh, false, outcome, these, Math.max(outcome.mean(), 0),
            fragileWithout, seenOn, belowLimit, limit, assumed, nextStep);
    }
}
