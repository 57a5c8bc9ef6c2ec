package surfeit.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * A table of fixed-width columns for a terminal; columns grow with their content, nothing is cut off. Not thread-safe.
 */
public final class TextTable {
    private static final String GAP = "  ";

    private final List<List<String>> rows = new ArrayList<>();
    private final int[] widths;

    public TextTable(List<String> headings) {
        widths = new int[headings.size()];
        row(headings);
    }

    /** Adds a row with one cell per heading. */
    public TextTable row(List<String> cells) {
        if (cells.size() != widths.length) {
            throw new IllegalArgumentException("A row of this table has " + widths.length + " cells, got "
                + cells.size() + ".");
        }
        List<String> visible = cells.stream().map(VisibleText::line).toList();
        for (int i = 0; i < widths.length; i++) {
            widths[i] = Math.max(widths[i], VisibleText.length(visible.get(i)));
        }
        rows.add(visible);
        return this;
    }

    /** Adds a row of one text that widens no column, for a name too long to stand beside numbers. */
    public TextTable wide(String text) {
        rows.add(List.of(VisibleText.line(text)));
        return this;
    }

    /** Writes the headings, a rule, and the rows. */
    public void writeTo(Appendable out) throws IOException {
        for (int r = 0; r < rows.size(); r++) {
            writeRow(rows.get(r), out);
            if (r == 0) {
                List<String> rule = new ArrayList<>();
                for (int width : widths) {
                    rule.add("-".repeat(width));
                }
                writeRow(rule, out);
            }
        }
    }

    private void writeRow(List<String> cells, Appendable out) throws IOException {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < cells.size(); i++) {
            String cell = cells.get(i);
            line.append(i == 0 ? "" : GAP).append(cell)
                .append(" ".repeat(Math.max(widths[i] - VisibleText.length(cell), 0)));
        }
        out.append(line.toString().stripTrailing()).append('\n');
    }
}
