package surfeit.segregation.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.segregation.answer.ElementRatios;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.nominal.Comparison;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.LinearForm;
import surfeit.statistics.CombinedError;
import surfeit.statistics.RandomPart;

/**
 * Reads the ratio of every element of a group to one other against the same ratio in the nominal.
 *
 * <pre>
 *     R_i = (m_i / m_r) / (C0_i / C0_r)          L = m_i' / m_i - m_r' / m_r   (linear form of particle means m')
 *     interval: R_i exp(-h) to R_i exp(h),       h of L with the scatter of particles and the errors of i and r
 * </pre>
 * m group mean, C0 nominal, atomic fractions; r is the largest nominal element that cannot have caused the shift by
 * itself. Where either element lies near zero against its error the lower end is {@code R_i max(0, 1 - h)}: the outer
 * of both scales, as for its factor. Asked with three or more elements; said only where both nominals are points and
 * both means are above zero.
 */
final class RatioReader {
    private RatioReader() {
    }

    /** Empty with two elements, and where every element could have caused the shift by itself. */
    static Optional<ElementRatios> of(GroupAnalysis analysis, Optional<List<Element>> explanationSet) {
        NominalFractions nominal = analysis.comparison().nominal();
        if (nominal.size() < 3) {
            return Optional.empty();
        }
        double[] mean = analysis.units().mean();
        int reference = reference(nominal, mean, explanationSet.orElse(List.of()));
        if (reference < 0) {
            return Optional.empty();
        }
        List<ElementRatios.Ratio> ratios = new ArrayList<>();
        for (int i = 0; i < mean.length; i++) {
            if (i != reference && nominal.isPoint(i) && mean[i] > 0) {
                double ratio = mean[i] / mean[reference] / (nominal.middle(i) / nominal.middle(reference));
                ratios.add(new ElementRatios.Ratio(nominal.elements().get(i), interval(analysis, i, reference, ratio)));
            }
        }
        return Optional.of(new ElementRatios(nominal.elements().get(reference), List.copyOf(ratios)));
    }

    private static int reference(NominalFractions nominal, double[] mean, List<Element> suspects) {
        int best = -1;
        for (int i = 0; i < mean.length; i++) {
            boolean usable = nominal.isPoint(i) && mean[i] > 0 && !suspects.contains(nominal.elements().get(i));
            if (usable && (best < 0 || nominal.middle(i) > nominal.middle(best))) {
                best = i;
            }
        }
        return best;
    }

    /** The outer limits over the runs with values below their limit as zero and as the limit. */
    private static Estimate interval(GroupAnalysis analysis, int element, int reference, double ratio) {
        boolean hull = !analysis.tests()[element].scale().equals("logit") || !analysis.tests()[reference].scale().equals("logit");
        NominalFractions nominal = analysis.comparison().nominal();
        double low = ratio;
        double high = ratio;
        for (GroupSums run : analysis.units().runs()) {
            double[] mean = run.mean();
            if (!(mean[element] > 0) || !(mean[reference] > 0)) {
                low = 0;
                continue;
            }
            double own = mean[element] / mean[reference] / (nominal.middle(element) / nominal.middle(reference));
            double half = halfWidth(analysis.comparison(), run, mean, element, reference);
            low = Math.min(low, own * (hull ? Math.max(0, 1 - half) : Math.exp(-half)));
            high = Math.max(high, own * Math.exp(half));
        }
        return new Estimate(ratio, low, high);
    }

    private static double halfWidth(Comparison comparison, GroupSums run, double[] mean, int element, int reference) {
        double[] weights = new double[mean.length];
        weights[element] = 1 / mean[element];
        weights[reference] = -1 / mean[reference];
        LinearForm form = new LinearForm(weights);
        double u = Math.hypot(form.shared(mean, comparison.calibration().errors(mean)),
            Math.hypot(relative(comparison, element), relative(comparison, reference)));
        double half = 0;
        for (RandomPart part : form.ofKind(run)) {
            half = Math.max(half, part.standardError() + u == 0 ? 0 : CombinedError.halfWidth(part, u, 0.95));
        }
        return half;
    }

    /** Relative standard uncertainty of the nominal itself. */
    private static double relative(Comparison comparison, int element) {
        return comparison.limits(element).uncertainty() / comparison.nominal().middle(element);
    }
}
