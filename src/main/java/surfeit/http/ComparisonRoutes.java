package surfeit.http;

import java.io.IOException;
import java.util.List;
import surfeit.http.json.ComparisonDocument;
import surfeit.lab.ComparedRecord;
import surfeit.lab.InputRevisions;
import surfeit.lab.Laboratory;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.report.ComparisonReport;
import surfeit.report.Signs;
import surfeit.report.figure.ContrastFigure;
import surfeit.segregation.answer.GroupBy;

/** Two samples on record against each other: as made against treated, lot against lot. */
final class ComparisonRoutes {
    private final Laboratory laboratory;

    ComparisonRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    List<Route> routes() {
        return List.of(Route.get("/v1/comparisons", Scope.READ).suffixed(Form.JSON, Form.CSV, Form.MARKDOWN, Form.SVG)
            .parameters("a", "b", "by", "same_particles").to(this::compare));
    }

    private void compare(Exchange exchange) throws IOException {
        String a = required(exchange, "a");
        String b = required(exchange, "b");
        GroupBy by = exchange.parameters().oneOf("by", GroupBy.values(), GroupBy::word).orElse(GroupBy.FEATURE);
        boolean same = exchange.parameters().flag("same_particles");
        InputRevisions ofA = laboratory.inputRevisions(a);
        InputRevisions ofB = laboratory.inputRevisions(b);
        if (exchange.answer().unchanged(ofA.sample(), ofA.alloy().orElse(0), ofB.sample(), ofB.alloy().orElse(0))) {
            return;
        }
        ComparedRecord compared = laboratory.compare(a, b, by, same);
        switch (exchange.form()) {
            case CSV -> {
                StringBuilder text = new StringBuilder();
                ComparisonReport.csv(compared.answer(), text);
                exchange.answer().text(text.toString());
            }
            case MARKDOWN -> {
                StringBuilder text = new StringBuilder();
                ComparisonReport.markdown(compared.answer(), Signs.UNICODE, text);
                exchange.answer().text(text.toString());
            }
            case SVG -> exchange.answer().figure(ContrastFigure.of(compared.answer()));
            default -> exchange.answer().json(200, json ->
                ComparisonDocument.write(json, compared, exchange.now(), exchange.facts().version()));
        }
    }

    private static String required(Exchange exchange, String name) {
        return exchange.parameters().text(name).orElseThrow(() -> new ProblemException(Problem.UNKNOWN_PARAMETER,
            "Expected the query parameters a and b, the names of two samples; " + name + " is missing."));
    }
}
