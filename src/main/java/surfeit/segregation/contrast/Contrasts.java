package surfeit.segregation.contrast;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.sums.GroupData;
import surfeit.spot.Judgement;
import surfeit.statistics.ManyTests;

/**
 * The groups of one answer against each other: every pair up to five groups, beyond that each against the largest.
 *
 * <p>Pairs that differ in feature and in beam energy are not compared. The p values of all contrasts form a family of
 * their own (Holm); a contrast of two elements is one test.
 */
public final class Contrasts {
    private static final int EVERY_PAIR_UP_TO = 5;

    private Contrasts() {
    }

    public static List<Contrast> of(List<GroupAnalysis> analyses, Judgement judgement) {
        List<GroupContrast> contrasts = new ArrayList<>();
        for (GroupAnalysis[] pair : pairs(analyses)) {
            ContrastSide a = ContrastSide.asMeasured(pair[0].data().name(), pair[0]);
            ContrastSide b = ContrastSide.asMeasured(pair[1].data().name(), pair[1]);
            GroupContrast.of(a, b, true, a.sameRun(b), judgement).ifPresent(contrasts::add);
        }
        return adjusted(contrasts, judgement);
    }

    private static List<GroupAnalysis[]> pairs(List<GroupAnalysis> analyses) {
        List<GroupAnalysis[]> pairs = new ArrayList<>();
        Optional<GroupAnalysis> largest = analyses.stream()
            .max(Comparator.comparingLong(analysis -> analysis.particles().first().spotCount()));
        for (int a = 0; a < analyses.size(); a++) {
            for (int b = a + 1; b < analyses.size(); b++) {
                GroupAnalysis first = analyses.get(a);
                GroupAnalysis second = analyses.get(b);
                boolean asked = analyses.size() <= EVERY_PAIR_UP_TO || first == largest.orElseThrow()
                    || second == largest.orElseThrow();
                if (asked && comparable(first.data(), second.data())) {
                    pairs.add(new GroupAnalysis[] {first, second});
                }
            }
        }
        return pairs;
    }

    private static boolean comparable(GroupData a, GroupData b) {
        return a.beamEnergyKev().equals(b.beamEnergyKev()) || a.baseName().equals(b.baseName());
    }

    /** Holm over all contrasts, then the words; one finding per contrast, in order. */
    static List<Contrast> adjusted(List<GroupContrast> contrasts, Judgement judgement) {
        if (contrasts.isEmpty()) {
            return List.of();
        }
        double[] family = contrasts.stream().flatMap(contrast -> contrast.family().stream())
            .mapToDouble(Double::doubleValue).toArray();
        double[] holm = ManyTests.holm(family);
        List<Contrast> findings = new ArrayList<>();
        int at = 0;
        for (GroupContrast contrast : contrasts) {
            int size = contrast.family().size();
            findings.add(contrast.finding(Arrays.copyOfRange(holm, at, at + size), judgement));
            at += size;
        }
        return findings;
    }

    static OptionalDouble optional(double value) {
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
