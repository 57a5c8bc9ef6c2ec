package surfeit.report.figure;

import java.util.List;
import surfeit.report.Listing;
import surfeit.segregation.Contrast;
import surfeit.segregation.GroupFinding;
import surfeit.segregation.Interpretation;
import surfeit.segregation.Scope;

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
            contrast.groupA() + " against " + contrast.groupB(), counts(contrast, interpretation.groups()),
            contrast.elements())).toList();
    }

    private static String counts(Contrast contrast, List<GroupFinding> groups) {
        String counts = contrast.paired() ? Listing.count(contrast.commonParticles().size(), "particle") + ", paired"
            : particles(contrast.groupA(), groups) + " and " + particles(contrast.groupB(), groups)
            + " particles, not paired";
        return "n = " + counts + (contrast.scope() == Scope.PARTICLES ? "" : ": speaks of these only");
    }

    private static long particles(String group, List<GroupFinding> groups) {
        return groups.stream().filter(finding -> finding.name().equals(group))
            .mapToInt(finding -> finding.particles().size()).sum();
    }
}
