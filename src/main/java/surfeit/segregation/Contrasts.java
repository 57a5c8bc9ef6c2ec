package surfeit.segregation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.statistics.ManyTests;

/**
 * The groups of one answer against each other: every pair up to five groups, beyond that each against the largest.
 *
 * <p>Pairs that differ in feature and in beam energy are not compared. The p values of all contrasts form a family of
 * their own (Holm); a contrast of two elements is one test.
 */
final class Contrasts {
    private static final int EVERY_PAIR_UP_TO = 5;

    private Contrasts() {
    }

    static List<Contrast> of(List<GroupAnalysis> analyses, MethodSettings settings) {
        List<GroupContrast> pairs = new ArrayList<>();
        for (GroupAnalysis[] pair : pairs(analyses)) {
            GroupContrast.of(ContrastSide.of(pair[0]), ContrastSide.of(pair[1]), settings).ifPresent(pairs::add);
        }
        return adjusted(pairs, settings);
    }

    private static List<GroupAnalysis[]> pairs(List<GroupAnalysis> analyses) {
        List<GroupAnalysis[]> pairs = new ArrayList<>();
        Optional<GroupAnalysis> largest = analyses.stream()
            .max(Comparator.comparingLong(analysis -> analysis.particles().first().spotCount()));
        for (int a = 0; a < analyses.size(); a++) {
            for (int b = a + 1; b < analyses.size(); b++) {
                GroupAnalysis first = analyses.get(a);
                GroupAnalysis second = analyses.get(b);
                boolean asked = analyses.size() <= EVERY_PAIR_UP_TO || first == largest.orElseThrow() || second == largest.orElseThrow();
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

    /** Holm over all contrasts, then the words. */
    static List<Contrast> adjusted(List<GroupContrast> pairs, MethodSettings settings) {
        List<Double> family = new ArrayList<>();
        for (GroupContrast pair : pairs) {
            family.addAll(pair.family());
        }
        double[] holm = ManyTests.holm(family.stream().mapToDouble(Double::doubleValue).toArray());
        List<Contrast> contrasts = new ArrayList<>();
        int at = 0;
        for (GroupContrast pair : pairs) {
            int size = pair.family().size();
            double[] own = new double[size];
            System.arraycopy(holm, at, own, 0, size);
            at += size;
            contrasts.add(pair.finding(own, settings));
        }
        return contrasts;
    }

    static OptionalDouble optional(double value) {
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
