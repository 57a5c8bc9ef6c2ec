package surfeit.http;

import java.io.IOException;
import java.util.Optional;
import surfeit.http.json.InterpretationDocument;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.Segregation;
import surfeit.report.figure.AnswerFigure;
import surfeit.segregation.blocks.SpotSource;

/** Gives the answer in the form that was asked for. */
final class AnswerForms {
    /** The forms an answer comes in. */
    static final Form[] ALL = {Form.JSON, Form.CSV, Form.MARKDOWN, Form.HTML, Form.SVG};

    private AnswerForms() {
    }

    static void answer(Exchange exchange, Segregation answer, SpotSource spots) throws IOException {
        answer(exchange, answer, spots, Optional.empty());
    }

    /** @param fileName of the file the spots came in, where they are not on record */
    static void answer(Exchange exchange, Segregation answer, SpotSource spots, Optional<String> fileName)
            throws IOException {
        AnswerFile file = new AnswerFile(answer, spots, exchange.now(), fileName);
        switch (exchange.form()) {
            case CSV -> exchange.answer().text(file.csv());
            case MARKDOWN -> exchange.answer().text(file.markdown());
            case HTML -> {
                exchange.answer().header(SecurityHeaders.POLICY, PagePolicy.REPORT);
                exchange.answer().text(file.html());
            }
            case SVG -> exchange.answer().figure(file.figure(figure(exchange)));
            default -> exchange.answer().json(200, json ->
                InterpretationDocument.write(json, answer, exchange.now(), exchange.facts().version()));
        }
    }

    /** Which figure is wanted. @throws ProblemException where one is named for a form that is none */
    static AnswerFigure figure(Exchange exchange) {
        AnswerFigure figure = exchange.parameters().oneOf("figure", AnswerFigure.values(), AnswerFigure::word)
            .orElse(AnswerFigure.FACTORS);
        if (exchange.form() != Form.SVG && exchange.parameters().text("figure").isPresent()) {
            throw new ProblemException(Problem.UNKNOWN_PARAMETER,
                "The query parameter figure goes with the form .svg only; the other forms are whole answers.");
        }
        return figure;
    }
}
