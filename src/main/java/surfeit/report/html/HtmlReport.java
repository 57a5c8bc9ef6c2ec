package surfeit.report.html;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import surfeit.report.AnswerDocument;
import surfeit.report.Provenance;
import surfeit.report.ReportDocument;
import surfeit.report.ReportSection;
import surfeit.report.ReportSection.Topic;
import surfeit.report.Signs;
import surfeit.report.figure.AnswerFigure;
import surfeit.report.figure.Figure;
import surfeit.report.figure.Illustrations;
import surfeit.segregation.Interpretation;

/** The report of an answer as one HTML file with its figures; words and numbers are those of the Markdown report. */
public final class HtmlReport {
    private HtmlReport() {
    }

    /** Writes the report. */
    public static void write(Interpretation interpretation, Provenance provenance, Illustrations illustrations,
                             Appendable out) throws IOException {
        ReportDocument document = AnswerDocument.of(interpretation, provenance, Signs.UNICODE);
        HtmlPage.write(document, figures(document, interpretation, provenance.title(), illustrations), out);
    }

    /** Writes those of its sections that are about certain topics, as part of another page. */
    public static void sections(Interpretation interpretation, Provenance provenance, Illustrations illustrations,
                                Set<Topic> topics, Appendable out) throws IOException {
        ReportDocument document = AnswerDocument.of(interpretation, provenance, Signs.UNICODE);
        Map<Topic, List<Figure>> figures = figures(document, interpretation, provenance.title(), illustrations);
        HtmlSections sections = new HtmlSections(out);
        for (ReportSection section : document.sections()) {
            if (topics.contains(section.topic())) {
                sections.write(section, figures.getOrDefault(section.topic(), List.of()));
            }
        }
    }

    private static Map<Topic, List<Figure>> figures(ReportDocument document, Interpretation interpretation,
                                                    String subject, Illustrations illustrations) {
        Map<Topic, List<Figure>> figures = new EnumMap<>(Topic.class);
        figures.put(Topic.FOUND, drawn(AnswerFigure.FACTORS, interpretation, subject, illustrations));
        List<Figure> beside = new ArrayList<>(drawn(AnswerFigure.SPOTS, interpretation, subject, illustrations));
        List<Figure> depths = drawn(AnswerFigure.DEPTHS, interpretation, subject, illustrations);
        if (document.sections().stream().anyMatch(section -> section.topic() == Topic.RIVALS)) {
            figures.put(Topic.RIVALS, depths);
        } else {
            beside.addAll(depths);
        }
        figures.put(Topic.NUMBERS, beside);
        figures.put(Topic.CONTRASTS, drawn(AnswerFigure.CONTRASTS, interpretation, subject, illustrations));
        return figures;
    }

    private static List<Figure> drawn(AnswerFigure figure, Interpretation interpretation, String subject,
                                      Illustrations illustrations) {
        return illustrations.draw(figure, interpretation, subject).stream().toList();
    }
}
