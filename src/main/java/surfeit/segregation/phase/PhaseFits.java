package surfeit.segregation.phase;

import java.util.List;
import surfeit.segregation.nominal.Comparison;
import surfeit.segregation.nominal.DecisionLevel;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.sums.PhaseField;
import surfeit.segregation.uncertainty.GroupRuns;
import surfeit.segregation.uncertainty.SharedError;
import surfeit.statistics.CombinedError;
import surfeit.statistics.RandomPart;

/**
 * Whether a group mean may be the composition of a phase: one test per element, the smallest p times their number.
 *
 * <p>Inside the phase's field ({@link PhaseField}) p is 1. The composition itself carries a tolerance of {@value
 * #TOLERANCE} (rectangular, atomic fraction): assessed diagrams differ by about half an
 * at% (tin-lead eutectic 61.9 or 62.13 wt% Sn). Judgement. A binary is one test. Where values lie below their limit, an
 * element counts against a phase only if it does so with zero and with the limit in their place.
 */
final class PhaseFits {
    static final double TOLERANCE = 0.005;
    /** The tolerance as a standard uncertainty. */
    static final double UNCERTAINTY = TOLERANCE / Math.sqrt(3);

    private final NominalTest[] tests;
    private final double[][] means;
    private final SharedError[] shared;

    /** @param tests the tests of the same sums against nominal, for their random parts */
    PhaseFits(GroupRuns runs, Comparison comparison, NominalTest[] tests) {
        this.tests = tests;
        this.means = new double[runs.runs().size()][];
        this.shared = new SharedError[means.length];
        for (int run = 0; run < means.length; run++) {
            means[run] = runs.runs().get(run).mean();
            shared[run] = comparison.shared(means[run]);
        }
    }

    /**
     * p of "the group is this phase", adjusted for the number of its elements.
     *
     * <p>With three elements or more only the smallest counts: asked first is the element that lies furthest off, and of
     * the others only whether they have a smaller one.
     */
    double pValue(PhaseField field) {
        int elements = field.composition().length;
        if (elements == 2) {
            return Math.max(joined(field, 0, DecisionLevel.EVERY_VALUE), joined(field, 1, DecisionLevel.EVERY_VALUE));
        }
        int first = furthest(field);
        double smallest = joined(field, first, DecisionLevel.EVERY_VALUE);
        for (int i = 0; i < elements && smallest > 0; i++) {
            if (i != first) {
                smallest = Math.min(smallest, joined(field, i, DecisionLevel.ofTwoSided(smallest)));
            }
        }
        return Math.min(1, elements * smallest);
    }

    /** The element whose mean lies most standard uncertainties of the shared error off the phase. */
    private int furthest(PhaseField field) {
        int furthest = 0;
        double most = -1;
        for (int i = 0; i < field.composition().length; i++) {
            double off = Math.abs(limits(field, i).distance(means[0][i]))
                / Math.hypot(shared[0].linear(i), UNCERTAINTY);
            if (off > most) {
                most = off;
                furthest = i;
            }
        }
        return furthest;
    }

    private static NominalTest.Limits limits(PhaseField field, int element) {
        return new NominalTest.Limits(field.low()[element], field.high()[element], UNCERTAINTY);
    }

    /** p of one element over all runs; where it is surely above the level, perhaps 1. */
    private double joined(PhaseField field, int element, DecisionLevel level) {
        NominalTest.Limits limits = limits(field, element);
        double p = 0;
        int direction = 0;
        for (int run = 0; run < means.length; run++) {
            double mean = means[run][element];
            int own = (int) Math.signum(limits.distance(mean));
            if (own == 0 || run > 0 && own != direction) {
                return 1;
            }
            direction = own;
            p = Math.max(p, one(mean, shared[run], element, limits, level));
        }
        return p;
    }

    private double one(double mean, SharedError error, int element, NominalTest.Limits limits, DecisionLevel level) {
        List<RandomPart> parts = tests[element].parts().isEmpty() ? List.of(RandomPart.known(0))
            : tests[element].parts();
        if (limits.low() > 0 && limits.low() < 1 || limits.high() > 0 && limits.high() < 1) {
            return NominalTest.pValue(mean, parts, error, element, limits, level);
        }
        // A pure element or an absent one has no logit.
        double u = Math.hypot(error.linear(element), limits.uncertainty());
        double distance = limits.distance(mean);
        double p = 0;
        for (RandomPart part : parts) {
            boolean above = level.surelyAboveTwoSided(distance, part.standardError(), part.degreesOfFreedom(), u);
            p = above ? 1 : Math.max(p, CombinedError.twoSidedP(distance, part, u));
        }
        return p;
    }
}
