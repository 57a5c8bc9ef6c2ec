package surfeit.report.html;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import surfeit.report.AnswerDocument;
import surfeit.report.Provenance;
import surfeit.report.ReportDocument;
import surfeit.report.ReportSection;
import surfeit.report.ReportSection.Topic;
import surfeit.report.Signs;
import surfeit.report.figure.AnswerFigure;
import surfeit.report.figure.Figure;
import surfeit.report.figure.Illustrations;
import surfeit.segregation.answer.Interpretation;

/** The report of an answer as one HTML file with its figures; words and numbers are those of the Markdown report. */
public final class HtmlReport {
    private HtmlReport() {
    }

    /** Writes the report. */
    public static void write(Interpretation interpretation, Provenance provenance, Illustrations illustrations,
                             Appendable out) throws IOException {
        ReportDocument document = AnswerDocument.of(interpretation, provenance, Signs.UNICODE);
        HtmlPage.write(document, figures(document, figure ->
            illustrations.pages(figure, interpretation, provenance.title())), out);
    }

    /** Writes those of its sections that are about certain topics, as part of another page. */
    public static void sections(Interpretation interpretation, Provenance provenance, Illustrations illustrations,
                                Set<Topic> topics, Appendable out) throws IOException {
        ReportDocument document = AnswerDocument.of(interpretation, provenance, Signs.UNICODE);
        Map<Topic, List<Figure>> figures = figures(document, figure ->
            illustrations.draw(figure, interpretation, provenance.title()).stream().toList());
        HtmlSections sections = new HtmlSections(out);
        for (ReportSection section : document.sections()) {
            if (topics.contains(section.topic())) {
                sections.write(section, figures.getOrDefault(section.topic(), List.of()));
            }
        }
    }

    private static Map<Topic, List<Figure>> figures(ReportDocument document,
                                                    Function<AnswerFigure, List<Figure>> drawn) {
        Map<Topic, List<Figure>> figures = new EnumMap<>(Topic.class);
        figures.put(Topic.FOUND, drawn.apply(AnswerFigure.FACTORS));
        List<Figure> beside = new ArrayList<>(drawn.apply(AnswerFigure.SPOTS));
        List<Figure> depths = drawn.apply(AnswerFigure.DEPTHS);
        if (document.sections().stream().anyMatch(section -> section.topic() == Topic.RIVALS)) {
            figures.put(Topic.RIVALS, depths);
        } else {
            beside.addAll(depths);
        }
        figures.put(Topic.NUMBERS, beside);
        figures.put(Topic.CONTRASTS, drawn.apply(AnswerFigure.CONTRASTS));
        return figures;
    }
}
