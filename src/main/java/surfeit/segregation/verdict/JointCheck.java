package surfeit.segregation.verdict;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import surfeit.composition.Closure;
import surfeit.composition.LogRatios;
import surfeit.composition.NominalFractions;
import surfeit.segregation.answer.JointTest;
import surfeit.segregation.uncertainty.GroupRuns;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.statistics.HotellingT2;

/**
 * Makes the {@link JointTest} of a group: asked with three or more elements, a nominal of points and at least two
 * particles more than elements. A value below its limit enters as 0.65 of the limit, and the test then says so.
 */
final class JointCheck {
    /** Usual share of the limit put in place of a value below it: Martin-Fernandez et al., Math. Geol. 35 (2003) 253. */
    private static final double REPLACEMENT = 0.65;
    private static final int MORE_PARTICLES_THAN_ELEMENTS = 2;

    private JointCheck() {
    }

    static Optional<JointTest> of(GroupRuns runs, NominalFractions nominal) {
        int elements = nominal.size();
        boolean points = IntStream.range(0, elements).allMatch(i -> nominal.isPoint(i) && nominal.middle(i) > 0);
        int particles = runs.first().particleCount();
        if (elements < 3 || !points || particles < elements + MORE_PARTICLES_THAN_ELEMENTS) {
            return Optional.empty();
        }
        double[][] rows = new double[particles][];
        for (int p = 0; p < particles; p++) {
            double[] centre = centre(runs.runs(), p);
            if (IntStream.range(0, elements).anyMatch(i -> !(centre[i] > 0))) {
                return Optional.empty();
            }
            rows[p] = LogRatios.ilr(centre);
        }
        boolean replaced = runs.runs().size() > 1;
        return HotellingT2.of(rows, LogRatios.ilr(nominal.middles())).map(test -> new JointTest(test, replaced));
    }

    /**
     * The mean of a particle, values below their limit replaced: for one spot, zero becomes d = 0.65 of the limit's share
     * and every other part x (1 - sum of d), so that ratios among the rest stay.
     *
     * @param runs below a limit as zero, and, if anything is, as the limit
     */
    static double[] centre(List<GroupSums> runs, int particle) {
        double[] atZero = runs.get(0).particles().get(particle).centre();
        if (runs.size() == 1) {
            return atZero;
        }
        double[] atLimit = runs.get(1).particles().get(particle).centre();
        double[] filled = new double[atZero.length];
        for (int i = 0; i < filled.length; i++) {
            filled[i] = atZero[i] + REPLACEMENT * (atLimit[i] - atZero[i]);
        }
        return Closure.close(filled);
    }
}
