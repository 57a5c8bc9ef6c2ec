package surfeit.report;

import java.io.IOException;
import java.util.List;
import java.util.stream.Stream;
import surfeit.segregation.answer.Interpretation;

/** The answer for a terminal: a fixed-width table, then the sentences, what else could explain it, and what to know. */
public final class TerminalReport {
    /** Fits a terminal of the usual 100 columns. Judgement. */
    private static final int WIDTH = 98;

    /** A longer name of a group stands above its numbers. Judgement. */
    private static final int NAME_MAX = 30;

    private TerminalReport() {
    }

    /**
     * Writes the answer as text lines that end with a line feed.
     *
     * @param title what it is about, for example the sample's name
     * @param signs the signs the terminal can show
     */
    public static void write(Interpretation interpretation, String title, Signs signs, Appendable out)
            throws IOException {
        out.append(VisibleText.line(title)).append(": ").append(MeasuredWords.counts(interpretation)).append('\n');
        out.append("Nominal in at%: ").append(MeasuredWords.nominal(interpretation.nominalFractions())).append("\n\n");
        table(interpretation, signs).writeTo(out);
        out.append('\n');
        PlainWords words = new PlainWords(interpretation, signs);
        paragraphs(words.summary(), signs, out);
        section("Against each other", words.contrasts(), signs, out);
        section("Phases", PhaseSection.details(interpretation), signs, out);
        section("How deep it could reach", DepthSection.skins(interpretation), signs, out);
        section("What else could explain it", Remarks.rivals(interpretation, signs), signs, out);
        section("To know", Remarks.caveats(interpretation), signs, out);
        section("Cautions", interpretation.cautions(), signs, out);
        section("How sure", List.of(Confidence.FIGURES, Confidence.MEANING), signs, out);
    }

    private static TextTable table(Interpretation interpretation, Signs signs) {
        TextTable table = new TextTable(ResultRow.headings(interpretation, signs));
        String previous = "";
        for (ResultRow row : ResultRow.of(interpretation, signs)) {
            List<String> cells = row.cells();
            boolean repeats = row.group().equals(previous);
            boolean isLong = VisibleText.length(row.group()) > NAME_MAX;
            if (isLong && !repeats) {
                table.wide(row.group());
            }
            table.row(repeats || isLong ? replaceFirst(cells) : cells);
            previous = row.group();
        }
        return table;
    }

    private static List<String> replaceFirst(List<String> cells) {
        return Stream.concat(Stream.of(""), cells.stream().skip(1)).toList();
    }

    private static void section(String heading, List<String> texts, Signs signs, Appendable out) throws IOException {
        if (!texts.isEmpty()) {
            out.append('\n').append(heading).append('\n');
            paragraphs(texts, signs, out);
        }
    }

    private static void paragraphs(List<String> texts, Signs signs, Appendable out) throws IOException {
        for (String text : texts) {
            String indent = "- ";
            for (String line : VisibleText.wrapped(signs.units(text), WIDTH - 2)) {
                out.append(indent).append(line).append('\n');
                indent = "  ";
            }
        }
    }
}
