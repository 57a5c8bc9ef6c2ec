package surfeit.segregation.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.nominal.Comparison;
import surfeit.segregation.nominal.DecisionLevel;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.uncertainty.GroupRuns;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.ParticleSums;

/**
 * Whether a verdict hangs on one particle, and on how many particles it shows by itself.
 *
 * <p>No particle is ever left out on its own accord: dropping values far from the mean would lower the coverage of the
 * interval to about 84 % (simulation on invented data).
 */
final class ParticleRobustness {
    /** Up to this many particles each is left out in turn; beyond it only those that can matter most. */
    private static final int ALL_IN_TURN = 32;
    private static final int EXTREMES = 2;

    private ParticleRobustness() {
    }

    /** Names of the particles without which an element's verdict is another one; asked from three particles on. */
    static List<List<String>> fragileWithout(GroupRuns runs, Comparison comparison, VerdictRule rule,
                                             List<NominalTest[]> family, int group, Verdict[] verdicts) {
        int elements = verdicts.length;
        List<List<String>> names = new ArrayList<>();
        for (int i = 0; i < elements; i++) {
            names.add(new ArrayList<>());
        }
        if (runs.first().particleCount() < 3) {
            return names;
        }
        DecisionLevel level = DecisionLevel.of(rule.alpha());
        for (int particle : candidates(runs.first())) {
            NominalTest[] tests = comparison.decisions(runs.withoutParticle(particle), level);
            double[] adjusted = adjusted(tests, family, group, rule.alpha());
            for (int i = 0; i < elements; i++) {
                if (rule.verdict(tests[i], adjusted[i]) != verdicts[i]) {
                    names.get(i).add(runs.first().particles().get(particle).name());
                }
            }
        }
        return names;
    }

    /** Adjusted p values of the changed group; where none reaches alpha unadjusted, adjustment changes no decision. */
    private static double[] adjusted(NominalTest[] tests, List<NominalTest[]> family, int group, double alpha) {
        double[] own = new double[tests.length];
        boolean any = false;
        for (int i = 0; i < own.length; i++) {
            own[i] = tests[i].p();
            any |= own[i] <= alpha;
        }
        if (!any) {
            return own;
        }
        List<NominalTest[]> changed = new ArrayList<>(family);
        changed.set(group, tests);
        return Adjustment.holm(changed)[group];
    }

    /** A particle acts through its mean alone, so the verdict changes most for the outermost and the innermost means. */
    private static Iterable<Integer> candidates(GroupSums sums) {
        int k = sums.particleCount();
        if (k <= ALL_IN_TURN) {
            return IntStream.range(0, k).boxed().toList();
        }
        TreeSet<Integer> chosen = new TreeSet<>();
        double[] mean = sums.mean();
        for (int i = 0; i < mean.length; i++) {
            int element = i;
            List<Integer> ordered = IntStream.range(0, k).boxed()
                .sorted(Comparator.comparingDouble(p -> sums.particles().get(p).centre()[element])).toList();
            chosen.addAll(ordered.subList(0, EXTREMES));
            chosen.addAll(ordered.subList(k - EXTREMES, k));
            ordered.stream().sorted(Comparator.comparingDouble(p ->
                Math.abs(sums.particles().get(p).centre()[element] - mean[element]))).limit(EXTREMES).forEach(chosen::add);
        }
        return chosen;
    }

    /**
     * Particles that each show the shift's direction by their own spots, unadjusted; empty below two particles and where
     * none has more than one spot or a stated uncertainty.
     */
    static List<Optional<ElementFinding.SeenOn>> seenOn(GroupRuns runs, Comparison comparison, double alpha,
                                                        NominalTest[] tests) {
        int k = runs.first().particleCount();
        int[] seen = new int[tests.length];
        int[] tested = new int[tests.length];
        DecisionLevel level = DecisionLevel.of(alpha);
        if (k > 1) {
            boolean limitAlone = runs.anyAllBelow();
            for (int particle = 0; particle < k; particle++) {
                if (showsNothing(runs.first().particles().get(particle)) && !limitAlone) {
                    continue;
                }
                NominalTest[] own = GroupAnalysis.oneOfBinary(comparison.decisions(runs.onlyParticle(particle), level));
                for (int i = 0; i < own.length; i++) {
                    boolean able = !own[i].parts().isEmpty();
                    boolean shows = able && own[i].p() <= alpha && tests[i].direction() != 0
                        && own[i].direction() == tests[i].direction();
                    tested[i] += able ? 1 : 0;
                    seen[i] += shows ? 1 : 0;
                }
            }
        }
        List<Optional<ElementFinding.SeenOn>> result = new ArrayList<>();
        for (int i = 0; i < tests.length; i++) {
            result.add(tested[i] > 0 ? Optional.of(new ElementFinding.SeenOn(seen[i], tested[i], k)) : Optional.empty());
        }
        return result;
    }

    /** One spot without a stated uncertainty has no random part, hence no test but that of an element below its limit. */
    private static boolean showsNothing(ParticleSums particle) {
        return particle.spots() == 1 && particle.counting().isEmpty();
    }
}
