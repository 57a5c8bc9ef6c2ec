package surfeit.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.Contrast.ElementContrast;
import surfeit.segregation.contrast.ComparisonAnswer;
import surfeit.segregation.contrast.FeatureComparison;
import surfeit.spot.FormulaGuard;

/** Two samples against each other as Markdown to read and as flat CSV rows with full doubles. */
public final class ComparisonReport {
    private static final List<String> COLUMNS = List.of("sample_a", "sample_b", "feature", "state", "element", "verdict",
        "mean_a_atomic_percent", "mean_b_atomic_percent", "difference_atomic_percent", "difference_atomic_percent_low",
        "difference_atomic_percent_high", "odds_ratio", "odds_ratio_low", "odds_ratio_high", "p_value", "p_value_adjusted");

    private ComparisonReport() {
    }

    /** Writes the comparison as Markdown. */
    public static void markdown(ComparisonAnswer answer, Signs signs, Appendable out) throws IOException {
        out.append("# ").append(MarkdownText.escaped(answer.nameA())).append(" against ")
            .append(MarkdownText.escaped(answer.nameB())).append("\n\n");
        out.append("Higher means higher in ").append(MarkdownText.escaped(answer.nameA())).append(".\n\n");
        out.append("| feature | state | element | verdict | at% in A | at% in B | odds of A over B |\n|---|---|---|---|---|---|---|\n");
        for (FeatureComparison feature : answer.features()) {
            for (ElementContrast element : elements(feature)) {
                out.append("| ").append(MarkdownText.escaped(feature.feature())).append(" | ").append(feature.state().word())
                    .append(" | ").append(element.element().symbol()).append(" | ").append(element.verdict().word())
                    .append(" | ").append(Digits.plain(Percent.of(element.meanA()))).append(" | ")
                    .append(Digits.plain(Percent.of(element.meanB()))).append(" | ")
                    .append(element.oddsRatio().map(odds -> Digits.factor(odds, signs)).orElse("")).append(" |\n");
            }
        }
        out.append("\n");
        for (String sentence : new ComparisonWords(answer, signs).summary()) {
            out.append("- ").append(MarkdownText.escaped(sentence)).append('\n');
        }
        for (Caveat caveat : answer.caveats()) {
            out.append("- ").append(caveat.weight() == Caveat.Weight.WARNING ? "Warning: " : "Note: ")
                .append(MarkdownText.escaped(caveat.detail())).append('\n');
        }
    }

    /** Writes one row per feature and element; a feature only one sample has is one row without an element. */
    public static void csv(ComparisonAnswer answer, Appendable out) throws IOException {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(text)) {
            csv.writeRecord(COLUMNS);
            for (FeatureComparison feature : answer.features()) {
                List<String> head = List.of(FormulaGuard.guarded(answer.nameA()), FormulaGuard.guarded(answer.nameB()),
                    FormulaGuard.guarded(feature.feature()), feature.state().word());
                for (ElementContrast element : elements(feature)) {
                    csv.writeRecord(row(head, element));
                }
                if (feature.contrast().isEmpty()) {
                    List<String> row = new ArrayList<>(head);
                    while (row.size() < COLUMNS.size()) {
                        row.add("");
                    }
                    csv.writeRecord(row);
                }
            }
        }
        out.append(text.getBuffer());
    }

    private static List<ElementContrast> elements(FeatureComparison feature) {
        return feature.contrast().map(contrast -> contrast.elements()).orElse(List.of());
    }

    private static List<String> row(List<String> head, ElementContrast element) {
        List<String> row = new ArrayList<>(head);
        row.add(element.element().symbol());
        row.add(element.verdict().word());
        row.add(number(Percent.of(element.meanA())));
        row.add(number(Percent.of(element.meanB())));
        row.add(number(Percent.of(element.difference().value())));
        row.add(number(Percent.of(element.difference().low())));
        row.add(number(Percent.of(element.difference().high())));
        row.add(element.oddsRatio().map(odds -> number(odds.value())).orElse(""));
        row.add(element.oddsRatio().map(odds -> number(odds.low())).orElse(""));
        row.add(element.oddsRatio().map(odds -> number(odds.high())).orElse(""));
        row.add(number(element.pValue()));
        row.add(number(element.pAdjusted()));
        return row;
    }

    private static String number(OptionalDouble value) {
        return value.isPresent() ? number(value.getAsDouble()) : "";
    }

    private static String number(double value) {
        return Double.isFinite(value) ? Double.toString(value) : "";
    }
}
