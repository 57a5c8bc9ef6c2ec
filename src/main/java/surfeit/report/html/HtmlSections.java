package surfeit.report.html;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import surfeit.report.ReportBlock;
import surfeit.report.ReportSection;
import surfeit.report.figure.Figure;

/** Writes sections of a report as part of a page that holds {@link Figure#STYLE}. For one page, not thread-safe. */
public final class HtmlSections {
    private final Appendable out;
    private int figures;

    public HtmlSections(Appendable out) {
        this.out = out;
    }

    /** Writes a section; figures are numbered through the page. */
    public void write(ReportSection section, List<Figure> drawn) throws IOException {
        String topic = section.topic().name().toLowerCase(Locale.ROOT);
        out.append("<section class=\"").append(topic).append("\">\n");
        if (!section.heading().isEmpty()) {
            out.append("<h2>").append(HtmlText.escaped(section.heading())).append("</h2>\n");
        }
        for (ReportBlock block : section.blocks()) {
            block(block, section.heading());
        }
        for (Figure figure : drawn) {
            figure(figure);
        }
        out.append("</section>\n");
    }

    private void block(ReportBlock block, String heading) throws IOException {
        if (block instanceof ReportBlock.Paragraph paragraph) {
            out.append("<p>").append(HtmlText.escaped(paragraph.text())).append("</p>\n");
        } else if (block instanceof ReportBlock.Items items) {
            out.append("<ul>\n");
            for (ReportBlock.Item item : items.items()) {
                item(item);
            }
            out.append("</ul>\n");
        } else if (block instanceof ReportBlock.Table table) {
            HtmlTable.write(table, heading, out);
        }
    }

    private void item(ReportBlock.Item item) throws IOException {
        out.append(item.lead().equals("warning") ? "<li class=\"warning\">" : "<li>");
        if (!item.lead().isEmpty()) {
            out.append("<b>").append(HtmlText.escaped(item.lead())).append("</b>");
        }
        String rest = item.text().substring(item.lead().length());
        out.append(Character.isWhitespace(rest.isEmpty() ? '.' : rest.charAt(0)) ? " " : "")
            .append(HtmlText.escaped(rest))
            .append("</li>\n");
    }

    private void figure(Figure figure) throws IOException {
        figures++;
        out.append("<figure>\n<figcaption><b>Figure ").append(Integer.toString(figures)).append(".</b> ")
            .append(HtmlText.escaped(figure.title())).append(". ").append(HtmlText.escaped(figure.subtitle()))
            .append("</figcaption>\n<div class=\"drawing\">\n").append(figure.inline("figure-" + figures))
            .append("</div>\n</figure>\n");
    }
}
