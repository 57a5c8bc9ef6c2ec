package surfeit.segregation;

import java.util.List;
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
        this.means = runs.runs().stream().map(GroupSums::mean).toArray(double[][]::new);
        this.shared = new SharedError[means.length];
        for (int run = 0; run < means.length; run++) {
            shared[run] = comparison.shared(means[run]);
        }
    }

    /** p of "the group is this phase", adjusted for the number of its elements. */
    double pValue(PhaseField field) {
        int elements = field.composition().length;
        double smallest = 1;
        double larger = 0;
        for (int i = 0; i < elements; i++) {
            double p = joined(i, new NominalTest.Limits(field.low()[i], field.high()[i], UNCERTAINTY));
            smallest = Math.min(smallest, p);
            larger = Math.max(larger, p);
        }
        return elements == 2 ? larger : Math.min(1, elements * smallest);
    }

    private double joined(int element, NominalTest.Limits limits) {
        double p = 0;
        int direction = 0;
        for (int run = 0; run < means.length; run++) {
            double mean = means[run][element];
            int own = (int) Math.signum(limits.distance(mean));
            if (own == 0 || run > 0 && own != direction) {
                return 1;
            }
            direction = own;
            p = Math.max(p, one(mean, shared[run], element, limits));
        }
        return p;
    }

    private double one(double mean, SharedError error, int element, NominalTest.Limits limits) {
        List<RandomPart> parts = tests[element].parts().isEmpty() ? List.of(RandomPart.known(0))
            : tests[element].parts();
        if (limits.low() > 0 && limits.low() < 1 || limits.high() > 0 && limits.high() < 1) {
            return NominalTest.pValue(mean, parts, error, element, limits);
        }
        // A pure element or an absent one has no logit.
        double u = Math.hypot(error.linear()[element], limits.uncertainty());
        double distance = limits.distance(mean);
        double p = 0;
        for (RandomPart part : parts) {
            p = Math.max(p, CombinedError.twoSidedP(distance, part, u));
        }
        return p;
    }
}
