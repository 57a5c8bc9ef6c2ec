package surfeit.report.figure;

import java.util.List;
import java.util.Optional;
import surfeit.report.Listing;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.Scope;
import surfeit.segregation.contrast.ComparisonAnswer;
import surfeit.segregation.contrast.FeatureComparison;

/**
 * Two groups of spots against each other, as they are named in a figure.
 *
 * @param name     what is compared: {@code dark patch against matrix}, or the feature that two samples share
 * @param counts   on how many spots or particles it rests
 * @param elements one finding per element; none where there is nothing to compare
 */
public record ContrastPair(String name, String counts, List<Contrast.ElementContrast> elements) {
    public ContrastPair {
        elements = List.copyOf(elements);
    }

    /** Every contrast of one answer. */
    public static List<ContrastPair> of(Interpretation interpretation) {
        return interpretation.contrasts().stream().map(contrast -> new ContrastPair(
            contrast.groupA() + " against " + contrast.groupB(), counts(contrast,
                group(contrast.groupA(), interpretation), group(contrast.groupB(), interpretation)),
            contrast.elements())).toList();
    }

    private static Optional<GroupFinding> group(String name, Interpretation interpretation) {
        return interpretation.groups().stream().filter(group -> group.name().equals(name)).findFirst();
    }

    /** Every feature of two samples; one that only one of them has, or that cannot be compared, is without elements. */
    public static List<ContrastPair> of(ComparisonAnswer answer) {
        return answer.features().stream().map(feature -> new ContrastPair(feature.feature(), counts(feature),
            feature.contrast().map(Contrast::elements).orElse(List.of()))).toList();
    }

    private static String counts(FeatureComparison feature) {
        return switch (feature.state()) {
            case GONE -> "gone: " + spots(feature.a()) + " in the first, none in the second";
            case APPEARED -> "appeared: none in the first, " + spots(feature.b()) + " in the second";
            case NOT_COMPARED -> "not compared: fewer than two elements in common";
            default -> feature.contrast().map(contrast -> counts(contrast, feature.a(), feature.b())).orElse("");
        };
    }

    private static String spots(Optional<GroupFinding> group) {
        return "n = " + Listing.count(group.map(GroupFinding::spotCount).orElse(0L), "spot");
    }

    private static String counts(Contrast contrast, Optional<GroupFinding> a, Optional<GroupFinding> b) {
        String counts = contrast.paired() ? Listing.count(contrast.commonParticles().size(), "particle") + ", paired"
            : particles(a) + " and " + particles(b) + " particles, not paired";
        return "n = " + counts + (contrast.scope() == Scope.PARTICLES ? "" : ": speaks of these only");
    }

    private static int particles(Optional<GroupFinding> group) {
        return group.map(finding -> finding.particles().size()).orElse(0);
    }
}
