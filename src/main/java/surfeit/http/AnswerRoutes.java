package surfeit.http;

import java.io.IOException;
import java.util.List;
import surfeit.http.json.InterpretationRequest;
import surfeit.intake.IntakeOptions;
import surfeit.lab.InputRevisions;
import surfeit.lab.Laboratory;
import surfeit.lab.SpotList;
import surfeit.segregation.GroupBy;
import surfeit.segregation.SpotSource;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/** The answer: for a sample on record, and for a sample and spots in the body. */
final class AnswerRoutes {
    private final Laboratory laboratory;

    AnswerRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    List<Route> routes() {
        return List.of(
            Route.get("/v1/samples/{sample}/segregation", Scope.READ).suffixed(Form.JSON, Form.CSV, Form.MARKDOWN)
                .parameters("by").to(this::segregation),
            Route.post("/v1/interpretations", Scope.READ).suffixed(Form.JSON, Form.CSV, Form.MARKDOWN)
                .takes(Form.JSON, Form.CSV).parameters("by").parameters(UploadOptions.PARAMETERS)
                .parameters(SampleOfAddress.PARAMETERS).to(this::interpret));
    }

    private void segregation(Exchange exchange) throws IOException {
        String name = exchange.path("sample");
        GroupBy by = by(exchange);
        InputRevisions inputs = laboratory.inputRevisions(name);
        if (!exchange.unchanged(inputs.sample(), inputs.alloy().orElse(0))) {
            AnswerForms.answer(exchange, laboratory.segregation(name, inputs, by));
        }
    }

    private void interpret(Exchange exchange) throws IOException {
        GroupBy by = by(exchange);
        IntakeOptions options = UploadOptions.of(exchange);
        Form form = exchange.bodyForm();
        try (Body body = exchange.body(form)) {
            Sample sample;
            List<Spot> spots;
            if (form == Form.CSV) {
                sample = SampleOfAddress.read(exchange.parameters(), options.stated().unit());
                spots = SpotList.read(body, UploadOptions.rows(form, options), sample);
            } else {
                SampleOfAddress.requireNone(exchange.parameters());
                InterpretationRequest request = InterpretationRequest.read(body, options);
                sample = request.sample();
                spots = request.spots();
            }
            AnswerForms.answer(exchange, laboratory.interpret(sample, SpotSource.of(spots), by));
        }
    }

    private static GroupBy by(Exchange exchange) {
        return exchange.parameters().oneOf("by", GroupBy.values(), GroupBy::word).orElse(GroupBy.FEATURE);
    }
}
