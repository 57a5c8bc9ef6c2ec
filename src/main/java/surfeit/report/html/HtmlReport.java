package surfeit.report.html;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import surfeit.report.AnswerDocument;
import surfeit.report.Provenance;
import surfeit.report.ReportDocument;
import surfeit.report.ReportSection.Topic;
import surfeit.report.Signs;
import surfeit.report.figure.ContrastFigure;
import surfeit.report.figure.DepthFigure;
import surfeit.report.figure.FactorFigure;
import surfeit.report.figure.Figure;
import surfeit.report.figure.SpotFigure;
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

    private static Map<Topic, List<Figure>> figures(ReportDocument document, Interpretation interpretation,
                                                    String subject, Illustrations illustrations) {
        Map<Topic, List<Figure>> figures = new EnumMap<>(Topic.class);
        figures.put(Topic.FOUND, List.of(FactorFigure.of(interpretation, subject)));
        List<Figure> beside = new ArrayList<>();
        illustrations.spots().ifPresent(spots -> beside.add(SpotFigure.of(spots, illustrations.phases(), subject)));
        boolean rivals = document.sections().stream().anyMatch(section -> section.topic() == Topic.RIVALS);
        illustrations.depths().map(depths -> DepthFigure.of(depths, subject)).ifPresent(figure -> {
            if (rivals) {
                figures.put(Topic.RIVALS, List.of(figure));
            } else {
                beside.add(figure);
            }
        });
        figures.put(Topic.NUMBERS, beside);
        if (!interpretation.contrasts().isEmpty()) {
            figures.put(Topic.CONTRASTS, List.of(ContrastFigure.of(interpretation, subject)));
        }
        return figures;
    }
}
