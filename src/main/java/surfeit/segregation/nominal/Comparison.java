package surfeit.segregation.nominal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import surfeit.composition.NominalFractions;
import surfeit.segregation.uncertainty.AdditiveFloor;
import surfeit.segregation.uncertainty.CalibrationError;
import surfeit.segregation.uncertainty.GroupRuns;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.RandomLadder;
import surfeit.segregation.uncertainty.ReferenceCorrection;
import surfeit.segregation.uncertainty.ReferenceScatter;
import surfeit.segregation.uncertainty.SharedError;
import surfeit.statistics.RandomPart;

/**
 * What a group is compared with and how: nominal, shared error, margin, and the reference spots if any.
 *
 * @param nominal   closed atomic limits, over the elements of the group
 * @param relative  r0, relative standard uncertainty of the accuracy class
 * @param floor     additive part of the shared error
 * @param margin    equivalence margin in log odds
 * @param reference correction by reference spots; the group's sums are then the corrected ones
 */
public record Comparison(NominalFractions nominal, double relative, AdditiveFloor floor, double margin,
                         Optional<ReferenceCorrection> reference) {

    /** Every element of the group mean against its nominal, for particles of the kind (or the one there is). */
    public NominalTest[] population(GroupSums sums) {
        return tests(sums, RandomLadder::population, NominalTest::of);
    }

    /** The same without intervals, for the many tests of which only the verdict at a level is asked. */
    NominalTest[] decisions(GroupSums sums, DecisionLevel level) {
        return tests(sums, RandomLadder::population, (mean, parts, shared, element, limits, theirMargin) ->
            NominalTest.withoutInterval(mean, parts, shared, element, limits, theirMargin, level));
    }

    /** The same for the measured particles themselves. */
    NominalTest[] theseParticles(GroupSums sums) {
        return tests(sums, (own, element, mean) -> RandomLadder.theseParticles(own, element), NominalTest::of);
    }

    public NominalTest[] population(GroupRuns runs) {
        return joined(runs, this::population);
    }

    public NominalTest[] decisions(GroupRuns runs, DecisionLevel level) {
        return joined(runs, sums -> decisions(sums, level));
    }

    public NominalTest[] theseParticles(GroupRuns runs) {
        return joined(runs, this::theseParticles);
    }

    /** Both runs, joined; of an element that every spot has below its limit, the limit. */
    private NominalTest[] joined(GroupRuns runs, Function<GroupSums, NominalTest[]> tests) {
        NominalTest[] result = tests.apply(runs.first());
        if (runs.runs().size() > 1) {
            NominalTest[] atLimit = tests.apply(runs.runs().get(1));
            for (int i = 0; i < result.length; i++) {
                result[i] = runs.allBelow()[i] ? BelowLimit.test(runs.largestLimit(i), limits(i), relative, margin)
                    : result[i].join(atLimit[i]);
            }
        }
        return result;
    }

    private NominalTest[] tests(GroupSums sums, Ladder ladder, Test test) {
        double[] mean = sums.mean();
        SharedError shared = shared(mean);
        NominalTest[] tests = new NominalTest[mean.length];
        for (int i = 0; i < tests.length; i++) {
            List<RandomPart> parts = ladder.of(sums, i, mean[i]).parts();
            tests[i] = test.of(mean[i], withReference(parts, sums, mean, i), shared, i, limits(i), margin);
        }
        return tests;
    }

    /** Random parts of one element of a group mean. */
    private interface Ladder {
        RandomLadder of(GroupSums sums, int element, double mean);
    }

    /** One way of testing a mean. */
    private interface Test {
        NominalTest of(double mean, List<RandomPart> parts, SharedError shared, int element, NominalTest.Limits limits,
                       double margin);
    }

    /** The shared error, to be filled for many means. */
    public SharedError sharedError() {
        return new SharedError(nominal.middles(), calibration());
    }

    public SharedError shared(double[] mean) {
        return sharedError().at(mean);
    }

    /** How large the calibration error of the compared numbers is. */
    public CalibrationError calibration() {
        return new CalibrationError(relative, floor, reference);
    }

    public NominalTest.Limits limits(int element) {
        double own = reference.isPresent() && reference.get().sameMaterial() ? 0 : nominal.standardUncertainty(element);
        return new NominalTest.Limits(nominal.low(element), nominal.high(element), own);
    }

    /** The same comparison without one element, the nominal closed again. */
    public Comparison without(int element) {
        return new Comparison(nominal.without(Set.of(nominal.elements().get(element))), relative, floor.without(element),
            margin, reference.map(correction -> correction.without(element)));
    }

    public Comparison withReference(Optional<ReferenceCorrection> correction) {
        return new Comparison(nominal, relative, floor, margin, correction);
    }

    private List<RandomPart> withReference(List<RandomPart> parts, GroupSums sums, double[] mean, int element) {
        if (reference.isEmpty()) {
            return parts;
        }
        Optional<RandomPart> added = ReferenceScatter.of(reference.get(), sums, mean, element);
        if (added.isEmpty()) {
            return List.of();
        }
        double q = Math.abs(mean[element] * (1 - mean[element]));
        List<RandomPart> both = new ArrayList<>(parts.size());
        for (RandomPart part : parts) {
            both.add(part.plus(added.get().times(q)));
        }
        return both;
    }
}
