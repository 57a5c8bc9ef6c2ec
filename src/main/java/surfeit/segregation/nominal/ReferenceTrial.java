package surfeit.segregation.nominal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import surfeit.segregation.answer.ReferenceUse;
import surfeit.segregation.sums.GroupData;
import surfeit.segregation.uncertainty.GroupRuns;
import surfeit.segregation.uncertainty.ReferenceCorrection;
import surfeit.segregation.uncertainty.ReferenceScatter;
import surfeit.segregation.uncertainty.SharedError;
import surfeit.statistics.RandomPart;

/**
 * Decides whether reference spots make a group's numbers better, and says what they did.
 *
 * <pre>
 *     better:  u_res^2 + s_r^2 &lt; u^2        used where at least half of the elements get better
 * </pre>
 * u_res shared error that is left with the reference, s_r random error the reference spots bring in, u shared error
 * without them; all on the logit scale, without the nominal's own tolerance, which a reference does not change.
 */
final class ReferenceTrial {
    private ReferenceTrial() {
    }

    static ReferenceUse of(GroupData data, Comparison plain, Comparison referenced, GroupRuns corrected,
                           NominalTest[] tests) {
        ReferenceCorrection correction = referenced.reference().orElseThrow();
        double[] mean = corrected.mean();
        SharedError before = plain.shared(data.units().mean());
        SharedError after = referenced.shared(mean);
        List<ReferenceUse.Correction> corrections = new ArrayList<>();
        int better = 0;
        boolean unknownScatter = false;
        for (int i = 0; i < tests.length; i++) {
            Optional<RandomPart> added = ReferenceScatter.of(correction, corrected.first(), mean, i);
            unknownScatter |= added.isEmpty();
            double random = added.map(RandomPart::standardError).orElse(Double.POSITIVE_INFINITY);
            double left = tests[i].scale().equals("logit") ? after.logit(i) : after.logitHull(i);
            better += Math.hypot(Double.isNaN(left) ? 0 : left, random) < before.logit(i) ? 1 : 0;
            corrections.add(new ReferenceUse.Correction(data.elements().get(i), correction.usable()[i],
                correction.gain()[i], before.logit(i), after.logit(i),
                added.map(RandomPart::standardError).orElse(0.0)));
        }
        boolean used = 2 * better >= tests.length;
        String explanation = used ? explanation(corrections, correction)
            : unknownScatter ? "Nothing tells how much the reference spot scatters; the numbers are uncorrected."
            : "The reference spots scatter so much that correcting with them would be worse than not; the numbers are "
                + "uncorrected.";
        return new ReferenceUse(used, explanation, correction.spotCount(), correction.correlation(), corrections);
    }

    /** What was corrected, by how much, and what became of the shared error. */
    private static String explanation(List<ReferenceUse.Correction> corrections, ReferenceCorrection correction) {
        String factors = corrections.stream().filter(ReferenceUse.Correction::usable)
            .map(c -> String.format(Locale.ROOT, "%s by %.3f", c.element(), c.factor()))
            .collect(Collectors.joining(", "));
        String left = corrections.stream().filter(c -> !c.usable()).map(c -> c.element().symbol())
            .collect(Collectors.joining(", "));
        String change = corrections.stream().filter(c -> !Double.isNaN(c.sharedUncertaintyBefore()))
            .map(c -> String.format(Locale.ROOT, "%s %.3f to %.3f", c.element(), c.sharedUncertaintyBefore(),
                Math.hypot(c.sharedUncertaintyAfter(), c.randomUncertaintyAdded())))
            .collect(Collectors.joining(", "));
        return "Every spot was multiplied by true over measured fraction of the reference piece (" + factors
            + (left.isEmpty() ? "" : "; " + left + " as measured") + ") and closed again; the standard uncertainty of "
            + "calibration in log odds goes from " + change + "."
            + (correction.sameMaterial() ? " The piece is the particles' own material, so the question is whether they "
                + "differ from it, and the nominal's tolerance plays no part." : "");
    }
}
