package surfeit.segregation.screening;

import java.util.Optional;
import java.util.function.DoubleConsumer;
import surfeit.segregation.nominal.Comparison;
import surfeit.segregation.nominal.DecisionLevel;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.nominal.NominalTrial;
import surfeit.segregation.sums.GroupData;
import surfeit.segregation.sums.SpotParts;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.ReferenceCorrection;
import surfeit.segregation.uncertainty.SharedError;
import surfeit.spot.Spot;

/**
 * Tests single spots of one group against nominal: from the numbers of a spot to the p values of its elements. Filled
 * again for every spot, without making an object. Not thread-safe.
 *
 * <pre>
 *     C_i = v_i / sum v      s_i^2 = (1 - C_i)^2 (u_i / sum v)^2 + C_i^2 sum_{j != i} (u_j / sum v)^2
 * </pre>
 * v the parts of a spot turned to atomic ones, u their standard uncertainties, both times the gain of the reference spots
 * where there are any: s_i^2 is the diagonal of the covariance of the closed fractions. A spot without uncertainties has the root of the mean square within particles of
 * its group as s, with N - k degrees of freedom. What follows is the test of a group mean, {@link NominalTrial}; a
 * screening asks for no equivalence, so no margin is given.
 */
final class SpotTests {
    private static final double ROOT_OF_12 = Math.sqrt(12);

    private final SpotParts parts;
    private final Optional<ReferenceCorrection> reference;
    private final SharedError shared;
    private final NominalTrial[] trials;
    private final double[] closed;
    private final double[] corrected;
    private final double[] closedUncertainties;
    /** Per element, half a step of the last printed digit as a standard uncertainty; no s is smaller. */
    private final double[] rounding;
    /** Per element, the scatter of the spots, and how many degrees of freedom it has; none below 1. */
    private final double[] scatter;
    private final long scatterFreedom;
    private final double[] standardErrors;

    SpotTests(GroupAnalysis analysis, double defaultLimit) {
        GroupData group = analysis.data();
        Comparison comparison = analysis.comparison();
        GroupSums particles = analysis.particles().first();
        int n = group.elements().size();
        parts = new SpotParts(group.elements(), defaultLimit, group.zeroIsNumber());
        reference = comparison.reference();
        shared = comparison.sharedError();
        trials = new NominalTrial[n];
        closed = new double[n];
        corrected = new double[n];
        closedUncertainties = new double[n];
        rounding = new double[n];
        scatter = new double[n];
        scatterFreedom = particles.withinDegreesOfFreedom();
        standardErrors = new double[n];
        for (int i = 0; i < n; i++) {
            trials[i] = new NominalTrial(comparison.limits(i), Double.NaN, false, DecisionLevel.EVERY_VALUE);
            rounding[i] = analysis.units().first().roundingStep()[i] / ROOT_OF_12;
            scatter[i] = particles.withinMeanSquare(i).map(Math::sqrt).orElse(Double.NaN);
        }
    }

    /** Tests a spot; false where it cannot be closed. */
    boolean test(Spot spot) {
        parts.read(spot);
        if (!parts.isClosable()) {
            return false;
        }
        parts.close(false, closed);
        if (reference.isPresent()) {
            reference.get().correct(closed, corrected);
        }
        double[] fractions = reference.isPresent() ? corrected : closed;
        shared.at(fractions);
        findStandardErrors(fractions);
        // One loop for each step, so that the processor works on several elements at a time.
        for (int i = 0; i < trials.length; i++) {
            trials[i].begin(fractions[i], standardErrors[i], shared, i);
        }
        double freedom = parts.hasUncertainty() ? Double.POSITIVE_INFINITY : Math.max(scatterFreedom, 1);
        for (int i = 0; i < trials.length; i++) {
            trials[i].add(standardErrors[i], freedom);
        }
        return true;
    }

    private void findStandardErrors(double[] fractions) {
        if (!parts.hasUncertainty()) {
            for (int i = 0; i < closed.length; i++) {
                standardErrors[i] = hasStandardErrors() ? Math.max(scatter[i], rounding[i]) : 0;
            }
            return;
        }
        double sum = parts.sum();
        for (int j = 0; j < closed.length; j++) {
            closedUncertainties[j] = parts.uncertainty(j) / sum;
        }
        if (reference.isPresent()) {
            for (int j = 0; j < closed.length; j++) {
                closedUncertainties[j] *= reference.get().scale(closed, j);
            }
        }
        SharedError.close(closedUncertainties, fractions, standardErrors);
        for (int i = 0; i < closed.length; i++) {
            standardErrors[i] = standardErrors[i] < rounding[i] ? rounding[i] : standardErrors[i];
        }
    }

    /** True where something tells how the spot scatters; else the shared error stands alone, and no p is given. */
    boolean hasStandardErrors() {
        return parts.hasUncertainty() || scatterFreedom >= 1;
    }

    /** Hands over the p values of the tested spot that count: one for two elements, none where nothing tells its scatter. */
    void pValues(DoubleConsumer taken) {
        if (!isTested()) {
            return;
        }
        if (trials.length == 2) {
            taken.accept(p(0));
            return;
        }
        for (int i = 0; i < trials.length; i++) {
            taken.accept(p(i));
        }
    }

    /** True where the spot has p values. */
    boolean isTested() {
        boolean tested = hasStandardErrors();
        for (NominalTrial trial : trials) {
            tested &= !Double.isNaN(trial.p());
        }
        return tested;
    }

    /** The p value of one element as it counts in the family: two closed elements are one test. */
    double p(int element) {
        return trials.length == 2 ? Math.max(trials[0].p(), trials[1].p()) : trials[element].p();
    }

    NominalTrial trial(int element) {
        return trials[element];
    }

    double standardError(int element) {
        return standardErrors[element];
    }

    SpotParts parts() {
        return parts;
    }
}
