package surfeit.report;

import java.io.IOException;
import surfeit.segregation.answer.Interpretation;

/** A report as a Markdown document; lines end with a line feed. */
public final class MarkdownReport {
    private MarkdownReport() {
    }

    /** Writes the report of an answer. */
    public static void write(Interpretation interpretation, Provenance provenance, Signs signs, Appendable out)
            throws IOException {
        write(AnswerDocument.of(interpretation, provenance, signs), out);
    }

    /** Writes any report. */
    public static void write(ReportDocument document, Appendable out) throws IOException {
        out.append("# ").append(MarkdownText.escaped(document.title())).append("\n\n");
        for (ReportSection section : document.sections()) {
            if (!section.heading().isEmpty()) {
                MarkdownText.heading(section.heading(), out);
            }
            for (ReportBlock block : section.blocks()) {
                write(block, out);
            }
        }
    }

    private static void write(ReportBlock block, Appendable out) throws IOException {
        if (block instanceof ReportBlock.Paragraph paragraph) {
            MarkdownText.paragraph(paragraph.text(), out);
        } else if (block instanceof ReportBlock.Items items) {
            MarkdownText.list(items.items().stream().map(ReportBlock.Item::text).toList(), out);
        } else if (block instanceof ReportBlock.Table table) {
            MarkdownText.table(table.columns().stream().map(ReportBlock.Column::heading).toList(), table.rows(), out);
        }
    }
}
