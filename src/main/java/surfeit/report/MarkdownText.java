package surfeit.report;

import java.io.IOException;
import java.util.List;
import java.util.stream.Collectors;

/** Text and tables in Markdown; whatever comes from outside is shown as it is and never acts as markup or HTML. */
final class MarkdownText {
    private static final String MARKUP = "\\`*_[]|~#!";

    private MarkdownText() {
    }

    /** One line that a Markdown reader shows literally inside a table cell or after other text. */
    static String escaped(String text) {
        StringBuilder escaped = new StringBuilder();
        VisibleText.line(text).codePoints().forEach(codePoint -> {
            switch (codePoint) {
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '&' -> escaped.append("&amp;");
                default -> {
                    if (MARKUP.indexOf(codePoint) >= 0) {
                        escaped.append('\\');
                    }
                    escaped.appendCodePoint(codePoint);
                }
            }
        });
        return escaped.toString();
    }

    /** The same at the start of a block, where a list mark, a rule or an item's number would open another. */
    private static String block(String text) {
        String line = escaped(text);
        if (line.startsWith("-") || line.startsWith("+") || line.startsWith("=")) {
            return "\\" + line;
        }
        return line.replaceFirst("^(\\d{1,9})([.)])( |$)", "$1\\\\$2$3");
    }

    static void row(List<String> cells, Appendable out) throws IOException {
        out.append(cells.stream().map(MarkdownText::escaped).collect(Collectors.joining(" | ", "| ", " |")))
            .append('\n');
    }

    static void table(List<String> headings, List<List<String>> rows, Appendable out) throws IOException {
        row(headings, out);
        out.append("|").append(" --- |".repeat(headings.size())).append('\n');
        for (List<String> cells : rows) {
            row(cells, out);
        }
        out.append('\n');
    }

    static void heading(String text, Appendable out) throws IOException {
        out.append("## ").append(escaped(text)).append("\n\n");
    }

    static void list(List<String> items, Appendable out) throws IOException {
        for (String item : items) {
            out.append("- ").append(block(item)).append('\n');
        }
        out.append(items.isEmpty() ? "" : "\n");
    }

    static void paragraph(String text, Appendable out) throws IOException {
        out.append(block(text)).append("\n\n");
    }
}
