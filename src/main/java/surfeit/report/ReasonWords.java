package surfeit.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Scope;

/** Why verdicts are inconclusive, and what the data exclude all the same. */
final class ReasonWords {
    private static final String CANNOT_TELL = "the shift repeats from spot to spot; whether it is chemistry or "
        + "calibration cannot be told from these data.";

    private final Scope scope;

    ReasonWords(Scope scope) {
        this.scope = scope;
    }

    /**
     * The sentences for the inconclusive elements of a group, one reason after another.
     *
     * @param inconclusive the elements to speak about; of a binary, one
     * @param all          true where no other element of the group has another verdict: the symbols are then left out
     */
    List<String> sentences(List<Judged> inconclusive, boolean all) {
        List<String> sentences = new ArrayList<>();
        for (Reason reason : Reason.values()) {
            List<Judged> affected = VerdictWords.only(inconclusive,
                judged -> judged.outcome().reason().equals(Optional.of(reason)));
            if (!affected.isEmpty()) {
                boolean named = !all || affected.size() < inconclusive.size();
                String text = affected.size() == 1 ? ofOne(reason, affected.get(0)) : ofMany(reason);
                sentences.add(said(affected, text, named));
                bound(reason, affected).ifPresent(sentences::add);
            }
        }
        List<Judged> agreeing = VerdictWords.only(inconclusive,
            judged -> judged.outcome().spotsAgreeOnShift() && !judged.isBeyondCalibration());
        if (!agreeing.isEmpty()) {
            boolean named = !all || agreeing.size() < inconclusive.size();
            sentences.add(said(agreeing, CANNOT_TELL, named));
        }
        return sentences;
    }

    private static String said(List<Judged> elements, String text, boolean named) {
        return named ? Listing.and(VerdictWords.symbols(elements)) + ": " + text : Listing.capitalised(text);
    }

    private String ofOne(Reason reason, Judged judged) {
        double shift = judged.outcome().difference().value();
        double u = judged.outcome().uncertainty();
        return switch (reason) {
            case CALIBRATION -> judged.isBelowLimitEverywhere()
                ? "the limit lies below nominal by no more than the calibration error can make."
                : agreement() + "; a shift of " + Digits.rounded(Math.abs(shift) * 100, u * 100)
                + " at% is no larger than the calibration error can make.";
            case SCATTER -> scatter() + " to tell.";
            case CALIBRATION_AND_SCATTER -> judged.isBeyondCalibration() ? scatter() + " to tell."
                : scatter() + ", and the calibration error alone could make such a shift.";
            case BETWEEN -> "near the margin: a shift of about " + Digits.signedPercent(shift, u) + " at%, between "
                + Digits.signedPercent(judged.outcome().difference().low(), u) + " and "
                + Digits.signedPercent(judged.outcome().difference().high(), u) + " at%.";
            case LIMIT_ABOVE_NOMINAL -> "the limit" + judged.finding().detectionLimit().stream()
                .mapToObj(limit -> " of " + judged.limit()).findFirst().orElse("") + " lies above "
                + judged.nominalToShow() + ", and every spot is below it.";
            case NO_REPEAT_AND_NO_SIGMA -> noScatterKnown();
        };
    }

    private String ofMany(Reason reason) {
        return switch (reason) {
            case CALIBRATION -> agreement() + "; the shifts are no larger than the calibration error can make.";
            case SCATTER -> scatter() + " to tell.";
            case CALIBRATION_AND_SCATTER -> scatter() + ", and the calibration error alone could make such shifts.";
            case BETWEEN -> "near the margin.";
            case LIMIT_ABOVE_NOMINAL -> "every spot is below limits that lie above nominal.";
            case NO_REPEAT_AND_NO_SIGMA -> noScatterKnown();
        };
    }

    private static String noScatterKnown() {
        return "one spot without a repeat and without a stated uncertainty: nothing tells its scatter, and "
            + "the interval holds the calibration error only.";
    }

    private String agreement() {
        return scope == Scope.THIS_SPOT ? "the spot's own uncertainty is small" : "the spots agree among themselves";
    }

    private String scatter() {
        return switch (scope) {
            case PARTICLES -> "the particles differ too much";
            case THESE_PARTICLES, THIS_PARTICLE -> "the spots differ too much";
            case THIS_SPOT -> "the spot's own uncertainty is too large";
        };
    }

    private static Optional<String> bound(Reason reason, List<Judged> affected) {
        if (reason == Reason.NO_REPEAT_AND_NO_SIGMA) {
            return Optional.empty();
        }
        List<String> bounds = affected.stream().filter(judged -> judged.outcome().notMoreThanFactor().isPresent())
            .map(judged -> Digits.upperBound(judged.outcome().notMoreThanFactor().getAsDouble())
                + (affected.size() > 1 ? " (" + judged.symbol() + ")" : "")).toList();
        if (!bounds.isEmpty()) {
            return Optional.of("Shifts beyond a factor (odds) of " + Listing.and(bounds) + " are excluded.");
        }
        boolean saidAlready = affected.stream().anyMatch(Judged::isBelowLimitEverywhere);
        return saidAlready ? Optional.empty() : Optional.of("These data set no bound to the shift.");
    }
}
