package surfeit.report.html;

import java.io.IOException;
import java.util.List;
import java.util.Map;
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
        HtmlSections sections = new HtmlSections(out);
        for (ReportSection section : document.sections()) {
            sections.write(section, drawn.getOrDefault(section.topic(), List.of()));
        }
        out.append("</main>\n</body>\n</html>\n");
    }
}
