package surfeit.report.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import surfeit.report.Digits;
import surfeit.report.MeasuredWords;
import surfeit.segregation.answer.Contrast.ElementContrast;
import surfeit.segregation.answer.Contrast.Word;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.contrast.ComparisonAnswer;

/**
 * Groups of spots against each other, element by element: the odds ratio with its 95 % interval around one.
 *
 * <p>For the groups of one sample and for two samples alike. The odds of a fraction x are {@code x/(1-x)}; the ratio is
 * that of the first group over that of the second.
 */
public final class ContrastFigure {
    private static final int MOST_IN_WORDS = 24;
    private static final String TITLE = ": groups against each other";

    private ContrastFigure() {
    }

    /** Draws two samples against each other, feature by feature. */
    public static Figure of(ComparisonAnswer answer) {
        return of(answer.nameA() + " against " + answer.nameB(), "First: " + answer.nameA() + ", "
            + MeasuredWords.counts(answer.a()) + ". Second: " + answer.nameB() + ", " + MeasuredWords.counts(answer.b())
            + ".", ContrastPair.of(answer), answer.marginOddsRatio());
    }

    /** Draws the groups of one sample against each other. */
    public static Figure of(Interpretation interpretation, String subject) {
        return of(subject + TITLE, MeasuredWords.counts(interpretation) + ".",
            ContrastPair.of(interpretation), interpretation.settings().judgement().marginOddsRatio());
    }

    /** The same in as many figures as it takes printed pages. */
    public static List<Figure> pages(Interpretation interpretation, String subject) {
        List<ContrastPair> pairs = ContrastPair.of(interpretation);
        double margin = interpretation.settings().judgement().marginOddsRatio();
        List<ContrastPair> shown = shown(pairs);
        List<ForestPlot> pages = plot(shown, margin).pages();
        return IntStream.range(0, pages.size()).mapToObj(page -> drawn(
            Sheet.pageTitle(subject + TITLE, page, pages.size()), MeasuredWords.counts(interpretation) + ".",
            shown.size(), pairs.size(), margin, pages.get(page))).toList();
    }

    /**
     * Draws pairs of groups.
     *
     * @param title           {@code Sample A7: features against each other}
     * @param subtitle        what else to say first: how many spots, which samples
     * @param marginOddsRatio odds ratio up to which a difference does not matter
     */
    public static Figure of(String title, String subtitle, List<ContrastPair> pairs, double marginOddsRatio) {
        List<ContrastPair> shown = shown(pairs);
        return drawn(title, subtitle, shown.size(), pairs.size(), marginOddsRatio, plot(shown, marginOddsRatio));
    }

    private static ForestPlot plot(List<ContrastPair> shown, double marginOddsRatio) {
        return new ForestPlot(shown.stream().map(pair -> block(pair, marginOddsRatio)).toList(),
            "odds ratio, first / second (no unit, log)", "at%, first | second", "odds ratio (95 % interval)");
    }

    private static Figure drawn(String title, String subtitle, int shown, int pairs, double marginOddsRatio,
                                ForestPlot plot) {
        Sheet sheet = new Sheet(title, subtitle);
        double bottom = plot.draw(sheet.top(), sheet.drawing());
        Legend legend = VerdictLegend.of(plot, mark -> word(mark).word(), "no difference",
            "margin: odds within a factor of " + Digits.setting(marginOddsRatio));
        List<String> notes = new ArrayList<>();
        notes.add("Odds of a fraction x: x / (1 - x). Intervals of 95 % from scatter and what calibration error is "
            + "left, not adjusted for the number of tests; the verdicts are.");
        if (shown < pairs) {
            notes.add("Drawn are " + shown + " of " + pairs
                + " pairs: those with a difference before others. The table has all.");
        }
        return sheet.finish(bottom, legend, notes, subtitle + " " + plot.inWords(MOST_IN_WORDS));
    }

    private static List<ContrastPair> shown(List<ContrastPair> pairs) {
        List<ContrastPair> chosen = new ArrayList<>();
        int rows = 0;
        for (boolean flagged : new boolean[] {true, false}) {
            for (ContrastPair pair : pairs) {
                boolean differs = pair.elements().stream()
                    .anyMatch(element -> element.verdict() == Word.HIGHER || element.verdict() == Word.LOWER);
                int more = pair.elements().size();
                if (differs == flagged && (rows + more <= FactorFigure.MOST_ROWS || chosen.isEmpty())) {
                    chosen.add(pair);
                    rows += more;
                }
            }
        }
        return pairs.stream().filter(chosen::contains).toList();
    }

    private static ForestPlot.Block block(ContrastPair pair, double margin) {
        return new ForestPlot.Block(pair.name(), pair.counts(),
            pair.elements().stream().map(element -> row(element, margin)).toList());
    }

    private static ForestPlot.Row row(ElementContrast element, double margin) {
        double quarter = (element.difference().high() - element.difference().low()) / 4 * 100;
        String means = Digits.rounded(element.meanA() * 100, quarter) + " | "
            + Digits.rounded(element.meanB() * 100, quarter);
        Optional<ForestPlot.Bar> bar = element.oddsRatio()
            .map(odds ->
                new ForestPlot.Bar(odds.value(), odds.low(), odds.high(), 1 / margin, margin, Optional.empty()));
        String numbers = element.oddsRatio().map(Digits::interval).orElseGet(() -> Digits.atomicPercentInterval(
            element.difference().value(), element.difference().low(), element.difference().high()));
        return new ForestPlot.Row(element.element().symbol(), means, bar, Mark.of(element.verdict()), numbers,
            element.verdict().word(), false);
    }

    private static Word word(Mark mark) {
        return switch (mark) {
            case MORE -> Word.HIGHER;
            case LESS -> Word.LOWER;
            case SAME -> Word.EQUIVALENT;
            case OPEN, BELOW -> Word.INCONCLUSIVE;
        };
    }
}
