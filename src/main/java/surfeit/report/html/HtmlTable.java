package surfeit.report.html;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import surfeit.report.ReportBlock.Column;
import surfeit.report.ReportBlock.Kind;
import surfeit.report.ReportBlock.Table;
import surfeit.report.VisibleText;
import surfeit.report.figure.VerdictSign;

/**
 * A table of a report. Rows of one group share its name, at their side or, beside columns of sentences, above them; the
 * sentences of a row stand in one wide cell, each after its heading; verdicts carry the signs of the figures.
 */
final class HtmlTable {
    /** Cells up to this length keep to one line; seven such columns fit an A4 page. Judgement. */
    private static final int LONGEST_LINE = 26;
    private static final int LONGEST_HEADING = 14;

    private final Table table;
    private final List<Integer> narrow = new ArrayList<>();
    private final List<Integer> prose = new ArrayList<>();
    private final Appendable out;

    private HtmlTable(Table table, Appendable out) {
        this.table = table;
        this.out = out;
        for (int i = 0; i < table.columns().size(); i++) {
            switch (table.columns().get(i).kind()) {
                case GROUP -> { }
                case SHORT, VERDICT -> narrow.add(i);
                case PROSE -> prose.add(i);
            }
        }
    }

    /** Writes a table; the name is told to those who do not see it. */
    static void write(Table table, String name, Appendable out) throws IOException {
        new HtmlTable(table, out).write(name);
    }

    private void write(String name) throws IOException {
        out.append("<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\"").append(HtmlText.escaped(name))
            .append("\">\n<table").append(prose.isEmpty() ? "" : " class=\"prose\"").append(">\n<thead><tr>");
        for (Column column : table.columns()) {
            if (column.kind() != Kind.PROSE && (column.kind() != Kind.GROUP || prose.isEmpty())) {
                heading(column.heading());
            }
        }
        if (!prose.isEmpty()) {
            heading(String.join(", ", prose.stream().map(i -> table.columns().get(i).heading()).toList()));
        }
        out.append("</tr></thead>\n");
        for (int from = 0; from < table.rows().size();) {
            int to = from + 1;
            while (to < table.rows().size() && group(to).equals(group(from))) {
                to++;
            }
            rows(from, to);
            from = to;
        }
        out.append("</table>\n</div>\n");
    }

    private void heading(String text) throws IOException {
        out.append(text.length() <= LONGEST_HEADING ? "<th scope=\"col\" class=\"line\">" : "<th scope=\"col\">")
            .append(HtmlText.escaped(text)).append("</th>");
    }

    /** What the row belongs to; empty text in a table without such a column. */
    private String group(int row) {
        for (int i = 0; i < table.columns().size(); i++) {
            if (table.columns().get(i).kind() == Kind.GROUP) {
                return table.rows().get(row).get(i);
            }
        }
        return "";
    }

    private void rows(int from, int to) throws IOException {
        out.append("<tbody>\n");
        boolean grouped = table.columns().stream().anyMatch(column -> column.kind() == Kind.GROUP);
        if (grouped && !prose.isEmpty()) {
            out.append("<tr><th scope=\"rowgroup\" colspan=\"").append(Integer.toString(narrow.size() + 1))
                .append("\">")
                .append(HtmlText.escaped(group(from))).append("</th></tr>\n");
        }
        for (int row = from; row < to; row++) {
            out.append("<tr>");
            if (grouped && prose.isEmpty() && row == from) {
                out.append("<th scope=\"rowgroup\" rowspan=\"").append(Integer.toString(to - from)).append("\">")
                    .append(HtmlText.escaped(group(row))).append("</th>");
            }
            cells(table.rows().get(row));
            out.append("</tr>\n");
        }
        out.append("</tbody>\n");
    }

    private void cells(List<String> cells) throws IOException {
        for (int i : narrow) {
            boolean verdict = table.columns().get(i).kind() == Kind.VERDICT;
            boolean oneLine = !verdict && prose.isEmpty() && cells.get(i).length() <= LONGEST_LINE;
            out.append(oneLine ? "<td class=\"line\">" : "<td>")
                .append(verdict ? verdict(cells.get(i)) : HtmlText.escaped(cells.get(i))).append("</td>");
        }
        if (!prose.isEmpty()) {
            prose(cells);
        }
    }

    private void prose(List<String> cells) throws IOException {
        out.append("<td>");
        // what one column holds, the head of the table says
        boolean named = prose.size() > 1;
        for (int i : prose) {
            if (!VisibleText.line(cells.get(i)).isEmpty()) {
                out.append("<p>");
                if (named) {
                    out.append("<span class=\"about\">").append(HtmlText.escaped(table.columns().get(i).heading()))
                        .append(":</span> ");
                }
                out.append(HtmlText.escaped(cells.get(i))).append("</p>");
            }
        }
        out.append("</td>");
    }

    private static String verdict(String words) {
        String sign = VerdictSign.inline(words);
        String text = HtmlText.escaped(words);
        int end = text.indexOf(' ') < 0 ? text.length() : text.indexOf(' ');
        // the sign stays on the line of the first word
        return sign.isEmpty() ? text : "<span class=\"line\">" + sign + " " + text.substring(0, end) + "</span>"
            + text.substring(end);
    }
}
