package surfeit.http;

import java.io.IOException;
import java.util.List;
import surfeit.lab.InputRevisions;
import surfeit.lab.Laboratory;
import surfeit.segregation.GroupBy;

/** The answer: for a sample on record, and for a sample and spots in the body. */
final class AnswerRoutes {
    private final Laboratory laboratory;

    AnswerRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    List<Route> routes() {
        return List.of(
            Route.get("/v1/samples/{sample}/segregation", Scope.READ).suffixed(Form.JSON, Form.CSV, Form.MARKDOWN)
                .parameters("by").to(this::segregation));
    }

    private void segregation(Exchange exchange) throws IOException {
        String name = exchange.path("sample");
        GroupBy by = by(exchange);
        InputRevisions inputs = laboratory.inputRevisions(name);
        if (!exchange.unchanged(inputs.sample(), inputs.alloy().orElse(0))) {
            AnswerForms.answer(exchange, laboratory.segregation(name, inputs, by));
        }
    }

    private static GroupBy by(Exchange exchange) {
        return exchange.parameters().oneOf("by", GroupBy.values(), GroupBy::word).orElse(GroupBy.FEATURE);
    }
}
