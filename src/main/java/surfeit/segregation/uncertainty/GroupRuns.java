package surfeit.segregation.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * A group's sums, once; or twice where values lie below their limit: with zero and with the limit in their place.
 *
 * @param runs       one run, or the zero run and the limit run; each closed after filling
 * @param allBelow   per element, true where every spot of the group has it below its limit
 */
public record GroupRuns(List<GroupSums> runs, boolean[] allBelow) {
    /** Less than this of a particle is no more than rounding. */
    private static final double LEAST_REST = 1e-9;

    public GroupRuns {
        runs = List.copyOf(runs);
    }

    /** The zero run, or the only one. */
    public GroupSums first() {
        return runs.get(0);
    }

    /** Mean composition: that of the only run, or the middle of both. */
    public double[] mean() {
        double[] mean = new double[first().elements()];
        for (GroupSums run : runs) {
            double[] own = run.mean();
            for (int i = 0; i < mean.length; i++) {
                mean[i] += own[i] / runs.size();
            }
        }
        return mean;
    }

    /** The largest particle mean of the limit run: the limit itself where every spot is below it. */
    public double largestLimit(int element) {
        return runs.get(runs.size() - 1).particles().stream().mapToDouble(particle -> particle.centre()[element]).max()
            .orElse(0);
    }

    /**
     * Whether something is left of every particle without some elements, so that it can be closed again.
     *
     * @param kept per element, true where it stays
     */
    public boolean leavesRest(boolean[] kept) {
        for (GroupSums run : runs) {
            for (ParticleSums particle : run.particles()) {
                double rest = 0;
                for (int i = 0; i < kept.length; i++) {
                    rest += kept[i] ? particle.centre()[i] : 0;
                }
                if (!(rest > LEAST_REST)) {
                    return false;
                }
            }
        }
        return true;
    }

    public GroupRuns withoutElement(int element) {
        boolean[] rest = new boolean[allBelow.length - 1];
        for (int i = 0; i < rest.length; i++) {
            rest[i] = allBelow[i < element ? i : i + 1];
        }
        return new GroupRuns(each(sums -> sums.withoutElement(element)), rest);
    }

    public GroupRuns withoutParticle(int index) {
        return new GroupRuns(each(sums -> sums.without(index)), allBelow);
    }

    public GroupRuns onlyParticle(int index) {
        return new GroupRuns(each(sums -> sums.only(index)), allBelow);
    }

    private List<GroupSums> each(UnaryOperator<GroupSums> change) {
        List<GroupSums> changed = new ArrayList<>(runs.size());
        runs.forEach(run -> changed.add(change.apply(run)));
        return changed;
    }

    /** Whether there is an element that every spot has below its limit. */
    public boolean anyAllBelow() {
        boolean any = false;
        for (boolean own : allBelow) {
            any |= own;
        }
        return any;
    }

    /** What {@link #allBelow} is where no element lies below its limit in every spot. */
    public static boolean[] none(int elements) {
        boolean[] none = new boolean[elements];
        Arrays.fill(none, false);
        return none;
    }
}
