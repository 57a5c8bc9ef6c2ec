package surfeit.report.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import surfeit.report.Digits;
import surfeit.report.Judged;
import surfeit.report.Listing;
import surfeit.report.MeasuredWords;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Verdict;

/**
 * The enrichment factor of every element in every group with its 95 % interval, around nominal, with the margin.
 *
 * <p>The margin is one of odds, so in factors it depends on the nominal: with odds ratio m and nominal c it reaches
 * from {@code 1/(m (1-c) + c)} to {@code m/(1-c + m c)}. Against a range the factor is that over the nearest limit and
 * one inside.
 */
public final class FactorFigure {
    /** Rows that fit two printed pages. Judgement. */
    static final int MOST_ROWS = 72;
    private static final int MOST_IN_WORDS = 24;

    private FactorFigure() {
    }

    /**
     * Draws the factors of an answer.
     *
     * @param subject what was measured, {@code Sample A7}
     */
    public static Figure of(Interpretation interpretation, String subject) {
        List<GroupFinding> shown = shown(interpretation.groups());
        return drawn(interpretation, title(interpretation, subject), shown.size(), plot(interpretation, shown));
    }

    /** The same in as many figures as it takes printed pages. */
    public static List<Figure> pages(Interpretation interpretation, String subject) {
        List<GroupFinding> shown = shown(interpretation.groups());
        List<ForestPlot> pages = plot(interpretation, shown).pages();
        String title = title(interpretation, subject);
        return IntStream.range(0, pages.size()).mapToObj(page -> drawn(interpretation,
            Sheet.pageTitle(title, page, pages.size()), shown.size(), pages.get(page))).toList();
    }

    private static String title(Interpretation interpretation, String subject) {
        String by = interpretation.groups().isEmpty() ? "group" : interpretation.groups().get(0).by().word();
        return subject + ": enrichment factors by " + by;
    }

    private static ForestPlot plot(Interpretation interpretation, List<GroupFinding> shown) {
        double margin = interpretation.settings().judgement().marginOddsRatio();
        return new ForestPlot(shown.stream().map(group -> block(group, margin)).toList(),
            "enrichment factor, found / nominal atomic fraction (no unit, log)", "nominal at%",
            "factor (95 % interval)");
    }

    private static Figure drawn(Interpretation interpretation, String title, int shown, ForestPlot plot) {
        double margin = interpretation.settings().judgement().marginOddsRatio();
        String counts = MeasuredWords.counts(interpretation) + ". Nominal in at%: "
            + MeasuredWords.nominal(interpretation.nominalFractions()) + ".";
        Sheet sheet = new Sheet(title, counts);
        double bottom = plot.draw(sheet.top(), sheet.drawing());
        Legend legend = VerdictLegend.of(plot, mark -> verdict(mark).word(), "nominal",
            "margin: odds within a factor of " + Digits.setting(margin) + " of nominal");
        List<String> notes = new ArrayList<>();
        notes.add("Each sign is the mean of the group's particles, each line its 95 % interval from scatter and "
            + "calibration error together, not adjusted for the number of tests; the verdicts are.");
        if (shown < interpretation.groups().size()) {
            notes.add("Drawn are " + shown + " of " + interpretation.groups().size()
                + " groups: those with an enriched or depleted element before others. The table has all.");
        }
        return sheet.finish(bottom, legend, notes, counts + " " + plot.inWords(MOST_IN_WORDS));
    }

    private static List<GroupFinding> shown(List<GroupFinding> groups) {
        List<GroupFinding> chosen = new ArrayList<>();
        int rows = 0;
        for (boolean flagged : new boolean[] {true, false}) {
            for (GroupFinding group : groups) {
                int more = group.elements().size();
                if (isFlagged(group) == flagged && (rows + more <= MOST_ROWS || chosen.isEmpty())) {
                    chosen.add(group);
                    rows += more;
                }
            }
        }
        return groups.stream().filter(chosen::contains).toList();
    }

    private static boolean isFlagged(GroupFinding group) {
        return group.elements().stream().map(finding -> finding.outcome().verdict())
            .anyMatch(verdict -> verdict == Verdict.ENRICHED || verdict == Verdict.DEPLETED);
    }

    private static ForestPlot.Block block(GroupFinding group, double margin) {
        String counts = Listing.count(group.spotCount(), "spot") + " on "
            + Listing.count(group.particles().size(), "particle")
            + switch (group.scope()) {
                case PARTICLES -> group.weakTwoParticles() ? " (weak)" : "";
                case THESE_PARTICLES -> ": speaks of these only";
                case THIS_PARTICLE -> ": speaks of this one only";
                case THIS_SPOT -> ": speaks of this spot only";
            };
        return new ForestPlot.Block(group.name(), "n = " + counts,
            group.elements().stream().map(finding -> row(group, finding, margin)).toList());
    }

    private static ForestPlot.Row row(GroupFinding group, ElementFinding finding, double margin) {
        Judged judged = new Judged(finding, finding.outcome(), group.spotCount());
        String word = judged.verdictWords() + (finding.isFragile() ? ", fragile" : "");
        return new ForestPlot.Row(judged.symbol(), judged.nominalNumber(), bar(group, finding, margin),
            Mark.of(finding.outcome().verdict()), numbers(judged), word, group.weakTwoParticles());
    }

    private static String numbers(Judged judged) {
        if (judged.isBelowLimitEverywhere()) {
            return "below limit, " + judged.limit();
        }
        if (judged.hasFactor()) {
            return Digits.interval(judged.outcome().enrichmentFactor().orElseThrow());
        }
        return judged.isRange() ? "inside its range" : "no factor";
    }

    private static Optional<ForestPlot.Bar> bar(GroupFinding group, ElementFinding finding, double margin) {
        double low = finding.nominalLow();
        double high = finding.nominalHigh();
        if (!(high > 0)) {
            return Optional.empty();
        }
        Estimate factor = factor(finding.outcome(), low, high);
        Optional<ForestPlot.Inner> inner = finding.theseParticles().filter(these -> group.weakTwoParticles())
            .map(these -> factor(these, low, high)).map(these -> new ForestPlot.Inner(these.low(), these.high()));
        double marginLow = low > 0 ? 1 / (margin * (1 - low) + low) : 0;
        double marginHigh = margin / (1 - high + margin * high);
        return Optional.of(new ForestPlot.Bar(factor.value(), factor.low(), factor.high(), marginLow, marginHigh,
            inner));
    }

    private static Estimate factor(Outcome outcome, double low, double high) {
        return outcome.enrichmentFactor().orElseGet(() -> new Estimate(overRange(outcome.mean(), low, high),
            overRange(outcome.low(), low, high), overRange(outcome.high(), low, high)));
    }

    /** Over the nearest limit; one inside. */
    private static double overRange(double fraction, double low, double high) {
        return fraction < low ? fraction / low : fraction > high ? fraction / high : 1;
    }

    private static Verdict verdict(Mark mark) {
        return switch (mark) {
            case MORE -> Verdict.ENRICHED;
            case LESS -> Verdict.DEPLETED;
            case SAME -> Verdict.CONSISTENT;
            case OPEN, BELOW -> Verdict.INCONCLUSIVE;
        };
    }
}
