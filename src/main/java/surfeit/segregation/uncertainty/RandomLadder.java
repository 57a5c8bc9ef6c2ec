package surfeit.segregation.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.statistics.RandomPart;

/**
 * The random part of a group mean: which standard error, with which degrees of freedom, enters a verdict.
 *
 * <pre>
 *     three or more particles     sd(P) / sqrt k                          k - 1
 *     two particles               max(sd(P) / sqrt 2, W, K)               1
 *     one particle, n spots       sd / sqrt n  (n - 1)   and   K  (infinite)
 *     these particles             W  (N - k)             and   K  (infinite)
 * </pre>
 * W and K as in {@link GroupSums}. Where two parts stand, both are computed and the wider interval and larger p
 * count. Every part is at least r / sqrt 12 with r the rounding step of the input, not divided by the number of
 * spots: values that round alike share their rounding error. With three or more particles the scatter already
 * contains the counting error. Settled by simulation on invented data.
 *
 * @param parts the parts; empty where nothing tells the scatter
 * @param smallerThanSpotsPredict true where the particles agree better than their spots allow (s below half of W or K)
 * @param source where the parts come from, in words
 */
public record RandomLadder(List<RandomPart> parts, boolean smallerThanSpotsPredict, String source) {
    /** A rectangular distribution of width r has the standard uncertainty r over the root of 12. */
    private static final double ROOT_OF_12 = Math.sqrt(12);
    private static final double SUSPICIOUSLY_SMALL = 0.5;

    /** Parts for particles of the kind (or for the one particle or spot there is). */
    public static RandomLadder population(GroupSums sums, int element, double mean) {
        int k = sums.particleCount();
        Optional<Double> within = sums.withinError(element);
        Optional<Double> counting = sums.countingError(element);
        if (k == 1) {
            return one(sums, element, within, counting);
        }
        double between = sums.betweenDeviation(element, mean) / Math.sqrt(k);
        double predicted = Math.max(within.orElse(0.0), counting.orElse(0.0));
        if (k == 2) {
            return of(List.of(new RandomPart(Math.max(between, predicted), 1)), false,
                "scatter of two particles, at least that of their spots", sums, element);
        }
        return of(List.of(new RandomPart(between, k - 1)), between < SUSPICIOUSLY_SMALL * predicted,
            "scatter of particles", sums, element);
    }

    /** Parts for the measured particles themselves. */
    public static RandomLadder theseParticles(GroupSums sums, int element) {
        return one(sums, element, sums.withinError(element), sums.countingError(element));
    }

    private static RandomLadder one(GroupSums sums, int element, Optional<Double> within, Optional<Double> counting) {
        List<RandomPart> parts = new ArrayList<>(2);
        within.ifPresent(error -> parts.add(new RandomPart(error, sums.withinDegreesOfFreedom())));
        counting.ifPresent(error -> parts.add(new RandomPart(error, Double.POSITIVE_INFINITY)));
        String source = within.isPresent()
            ? counting.isPresent() ? "scatter of spots and their stated uncertainty, the wider" : "scatter of spots"
            : counting.isPresent() ? "stated uncertainty of the spots" : "not given";
        return of(parts, false, source, sums, element);
    }

    private static RandomLadder of(List<RandomPart> parts, boolean small, String source, GroupSums sums, int element) {
        double floor = sums.roundingStep()[element] / ROOT_OF_12;
        if (parts.size() == 1) {
            return new RandomLadder(List.of(parts.get(0).atLeast(floor)), small, source);
        }
        List<RandomPart> floored = new ArrayList<>(parts.size());
        for (RandomPart part : parts) {
            floored.add(part.atLeast(floor));
        }
        return new RandomLadder(List.copyOf(floored), small, source);
    }
}
