package surfeit.report;

import static surfeit.report.FindingBuilder.finding;
import static surfeit.report.OutcomeBuilder.depleted;
import static surfeit.report.OutcomeBuilder.enriched;
import static surfeit.report.OutcomeBuilder.inconclusive;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalPart;
import surfeit.element.Element;
import surfeit.rival.Cause;
import surfeit.rival.Rival;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.Contrast.ElementContrast;
import surfeit.segregation.answer.Contrast.Word;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Scope;
import surfeit.segregation.answer.Verdict;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Judgement;

/**
 * Answers put together by hand for these tests. Every number is invented: none was measured, few fit each other
 * exactly.
 */
public final class Invented {
    public static final Provenance PROVENANCE = new Provenance("0.1.0", Optional.of("A7"), Optional.empty(),
        OptionalLong.of(7), "2026-11-20T14:03:00+01:00", Map.of("elements.csv", "00ff"), Map.of(),
        List.of(new SampleFact("description", "lot 7, invented", true), new SampleFact("beam", "15 keV", false)));

    private Invented() {
    }

    public static Interpretation answer(Nominal nominal, List<Contrast> contrasts, GroupFinding... groups) {
        return new Interpretation(nominal, nominal.resolve(), 24, 4, 1,
            MethodSettings.of(Judgement.DEFAULT, AccuracyClass.STANDARDLESS, 0.003), List.of(groups), contrasts,
            List.of(Caveat.note("shared-calibration-error", "All spots share one calibration error")),
            List.of("Fine powder: do not open in the open lab."), List.of(), List.of());
    }

    public static Interpretation answer(Nominal nominal, GroupFinding... groups) {
        return answer(nominal, List.of(), groups);
    }

    public static List<String> summary(Nominal nominal, GroupFinding... groups) {
        return new PlainWords(answer(nominal, groups), Signs.ASCII).summary();
    }

    public static String sentence(Nominal nominal, GroupBuilder group) {
        return summary(nominal, group.build()).get(0);
    }

    /** A nominal in at%: symbol, value, symbol, value ... */
    public static Nominal atomic(Object... symbolsAndPercents) {
        Map<Element, NominalPart> parts = new LinkedHashMap<>();
        for (int i = 0; i < symbolsAndPercents.length; i += 2) {
            Object part = symbolsAndPercents[i + 1];
            parts.put(Element.of((String) symbolsAndPercents[i]), part instanceof NominalPart given ? given
                : NominalPart.Point.exact(((Number) part).doubleValue() / 100));
        }
        return new Nominal(Basis.ATOMIC, parts);
    }

    public static final Nominal AG_CU = atomic("Ag", 60.1, "Cu", 39.9);
    public static final Nominal AL_SI = atomic("Al", 88.0, "Si", 12.0);
    public static final Nominal SN_BI = atomic("Sn", 57.0, "Bi", 43.0);

    /** Dark patches of an Ag-Cu brazing powder on four particles. */
    public static GroupBuilder copperRichPatches() {
        return new GroupBuilder("dark patch", 12, "P1", "P2", "P3", "P4")
            .element(finding("Ag", 0.601, depleted(0.219, 0.0121).factor(0.364, 0.284, 0.457).p(0.0012)).seenOn(4, 4))
            .element(finding("Cu", 0.399, enriched(0.781, 0.0121).factor(1.957, 1.711, 2.154).p(0.0012).beyondMargin())
                .seenOn(4, 4));
    }

    /** The matrix of the same powder: the calibration error alone could make the shift. */
    public static GroupBuilder matrix() {
        return new GroupBuilder("matrix", 12, "P1", "P2", "P3", "P4")
            .element(finding("Ag", 0.601, inconclusive(0.681, 0.0431).factor(1.133, 0.99, 1.26)
                .difference(0.08, -0.004, 0.161).because(Reason.CALIBRATION).notMoreThan(1.852)
                .lean(Verdict.ENRICHED).spotsAgree()).nextStep(REFERENCE))
            .element(finding("Cu", 0.399, inconclusive(0.319, 0.0431).factor(0.80, 0.61, 1.01)
                .difference(-0.08, -0.161, 0.004).because(Reason.CALIBRATION).notMoreThan(1.852)
                .lean(Verdict.DEPLETED).spotsAgree()).nextStep(REFERENCE));
    }

    public static final String REFERENCE = "Measure 5 spots on a reference piece, or compare features";

    public static Rival rival(String cause, Rival.CouldExplain strength, double factor) {
        return new Rival(Cause.SMALL_PATCH, cause, Optional.empty(), strength,
            Double.isNaN(factor) ? OptionalDouble.empty() : OptionalDouble.of(factor), "A flat patch.", "Measure at 5 keV.",
            List.of(), "Invented for this test.");
    }

    /** A cause weighed for one element. */
    static Rival rivalOf(String symbol, String cause, Rival.CouldExplain strength) {
        Rival any = rival(cause, strength, 2);
        return new Rival(any.code(), cause, Optional.of(Element.of(symbol)), strength, any.largestFactor(), any.assumes(),
            any.howToRuleOut(), any.needs(), any.source());
    }

    public static ForeignElement foreign(String symbol, double mean, double low, double high, boolean present) {
        return new ForeignElement(Element.of(symbol), mean, OptionalDouble.of(low), OptionalDouble.of(high), 0.003,
            true, present, 5);
    }

    public static Contrast copperContrast() {
        return new Contrast("dark patch", "matrix", true, List.of("P1", "P2", "P3", "P4"), List.of(), Scope.PARTICLES,
            0.9, Optional.empty(), List.of(
                contrasted("Ag", Word.LOWER, new Estimate(0.32, 0.23, 0.45), new Estimate(-0.231, -0.3, -0.15), 0.002),
                contrasted("Cu", Word.HIGHER, new Estimate(3.12, 2.22, 4.38), new Estimate(0.231, 0.15, 0.3), 0.002)));
    }

    public static ElementContrast contrasted(String symbol, Word word, Estimate odds, Estimate difference,
                                             double pAdjusted) {
        return new ElementContrast(Element.of(symbol), word, 0.5, 0.5, Optional.of(odds), difference,
            OptionalDouble.of(pAdjusted), OptionalDouble.of(pAdjusted), OptionalDouble.empty(),
            OptionalDouble.of(1 - pAdjusted), 0.1, 0.05, OptionalDouble.of(3), Optional.empty(), "logit");
    }
}
