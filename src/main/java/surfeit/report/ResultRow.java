package surfeit.report;

import java.util.ArrayList;
import java.util.List;
import surfeit.element.Element;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;

/** One row of the table of results, rounded and in words: an element of a group. */
record ResultRow(String group, String element, String nominal, String found, String factor, String verdict,
                 String howSure) {

    /** The headings; the first is what the spots were grouped by. */
    static List<String> headings(Interpretation interpretation, Signs signs) {
        String by = interpretation.groups().isEmpty() ? "group" : interpretation.groups().get(0).by().word();
        return List.of(by, "element", "nominal at%", "found at% " + signs.plusMinus() + " u", "factor (low to high)",
            "verdict", "how sure");
    }

    static List<ResultRow> of(Interpretation interpretation, Signs signs) {
        List<ResultRow> rows = new ArrayList<>();
        for (GroupFinding group : interpretation.groups()) {
            for (ElementFinding finding : group.elements()) {
                rows.add(of(group, finding, signs));
            }
            for (Element element : group.notMeasured()) {
                rows.add(new ResultRow(group.name(), element.symbol(), "", "", "", "not measured", ""));
            }
        }
        return rows;
    }

    private static ResultRow of(GroupFinding group, ElementFinding finding, Signs signs) {
        Judged judged = new Judged(finding, finding.outcome(), group.spotCount());
        String nominal = judged.nominalNumber() + (finding.nominalDerived() ? " (balance)" : "");
        return new ResultRow(group.name(), judged.symbol(), nominal, found(judged, signs), factor(judged),
            verdict(group, judged), Confidence.oneIn(judged.outcome()));
    }

    private static String found(Judged judged, Signs signs) {
        if (judged.isBelowLimitEverywhere()) {
            return "< " + judged.limit().replace(" at%", "");
        }
        long below = judged.finding().belowLimitCount();
        return Digits.percent(judged.outcome().mean(), judged.outcome().uncertainty(), signs)
            + (judged.lacksScatter() ? " (calibration only)" : "")
            + (below > 0 ? " (" + below + " of " + judged.spotCount() + " below limit)" : "");
    }

    private static String factor(Judged judged) {
        return judged.hasFactor() && !judged.isBelowLimitEverywhere()
            ? Digits.interval(judged.outcome().enrichmentFactor().orElseThrow()) : "";
    }

    private static String verdict(GroupFinding group, Judged judged) {
        String words = judged.verdictWords() + (judged.isFlagged() && judged.outcome().beyondMargin()
            ? ", beyond the margin" : "")
            + (judged.outcome().smallShiftDetected() ? ", small shift detected" : "")
            + (judged.finding().isFragile() ? ", fragile" : "");
        if (!group.weakTwoParticles()) {
            return words;
        }
        return words + " (weak" + judged.finding().theseParticles()
            .map(these -> "; on these two " + these.verdict().word()).orElse("") + ")";
    }

    List<String> cells() {
        return List.of(group, element, nominal, found, factor, verdict, howSure);
    }
}
