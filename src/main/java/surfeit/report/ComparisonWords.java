package surfeit.report;

import java.util.List;
import java.util.Optional;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.contrast.ComparisonAnswer;
import surfeit.segregation.contrast.FeatureComparison;

/** Two samples against each other in sentences to be read aloud: one text per feature. */
public final class ComparisonWords {
    private final ComparisonAnswer answer;
    private final Signs signs;

    public ComparisonWords(ComparisonAnswer answer, Signs signs) {
        this.answer = answer;
        this.signs = signs;
    }

    /** One text per feature, in the order of the answer. */
    public List<String> summary() {
        return answer.features().stream().map(this::sentence).toList();
    }

    /** What became of one feature from the first sample to the second. */
    public String sentence(FeatureComparison feature) {
        String next = feature.nextStep().map(step -> " " + Listing.sentence(step)).orElse("");
        return VisibleText.line(feature.feature()) + ", " + feature.state().word() + ": " + what(feature)
            + phases(feature)
            + next;
    }

    /** What phases the feature reads like in both, where these differ. */
    private String phases(FeatureComparison feature) {
        Optional<String> inA = looks(feature.a());
        Optional<String> inB = looks(feature.b());
        return inA.isEmpty() || inB.isEmpty() || inA.equals(inB) ? ""
            : " It reads like " + inA.get() + " in " + answer.nameA() + " and like " + inB.get() + " in "
            + answer.nameB()
                + ".";
    }

    private static Optional<String> looks(Optional<GroupFinding> group) {
        return group.flatMap(GroupFinding::phaseReading).flatMap(PhaseSentence::looks);
    }

    private String what(FeatureComparison feature) {
        return switch (feature.state()) {
            case GONE -> "spots of it in " + answer.nameA() + presence(feature.seenInA()) + ", none in " + answer.nameB() + ".";
            case APPEARED -> "none in " + answer.nameA() + ", spots of it in " + answer.nameB() + presence(feature.seenInB())
                + ".";
            case NOT_COMPARED -> "measured in both, but they share fewer than two elements.";
            default -> feature.contrast().map(contrast -> new ContrastWords(contrast, answer.a().nominalFractions(),
                answer.marginOddsRatio(), signs).text()).orElse("");
        };
    }

    private static String presence(Optional<FeatureComparison.Presence> presence) {
        return presence.map(seen -> " on " + seen.particles() + " of " + seen.of() + " particles").orElse("");
    }
}
