package surfeit.report.html;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import surfeit.report.ReportBlock;
import surfeit.report.ReportDocument;
import surfeit.report.ReportSection;
import surfeit.report.ReportSection.Topic;
import surfeit.report.figure.Figure;
import surfeit.report.figure.StyleSource;

/** Any report as one HTML file, with figures where they belong. */
public final class HtmlPage {
    /** The page's style as a source of a content security policy, for whoever serves it: {@code 'sha256-...'}. */
    public static final String STYLE_SOURCE = StyleSource.of(HtmlStyle.CSS);

    private final Appendable out;
    private int figures;

    private HtmlPage(Appendable out) {
        this.out = out;
    }

    /**
     * Writes a report.
     *
     * @param figures figures by the section they end
     */
    public static void write(ReportDocument document, Map<Topic, List<Figure>> figures, Appendable out)
            throws IOException {
        new HtmlPage(out).write(document, figures);
    }

    private void write(ReportDocument document, Map<Topic, List<Figure>> drawn) throws IOException {
        String title = HtmlText.escaped(document.title());
        out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n")
            .append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src ")
            .append(STYLE_SOURCE)
            .append("; base-uri 'none'; form-action 'none'\"/>\n")
            .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n<title>").append(title)
            .append("</title>\n<style>").append(HtmlStyle.CSS).append("</style>\n</head>\n<body>\n<main>\n<h1>")
            .append(title)
            .append("</h1>\n");
        for (ReportSection section : document.sections()) {
            String topic = section.topic().name().toLowerCase(Locale.ROOT);
            out.append("<section class=\"").append(topic).append("\">\n");
            if (!section.heading().isEmpty()) {
                out.append("<h2>").append(HtmlText.escaped(section.heading())).append("</h2>\n");
            }
            for (ReportBlock block : section.blocks()) {
                block(block, section.heading());
            }
            for (Figure figure : drawn.getOrDefault(section.topic(), List.of())) {
                figure(figure);
            }
            out.append("</section>\n");
        }
        out.append("</main>\n</body>\n</html>\n");
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
