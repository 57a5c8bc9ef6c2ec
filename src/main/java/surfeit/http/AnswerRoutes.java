package surfeit.http;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import surfeit.http.json.InterpretationRequest;
import surfeit.intake.IntakeOptions;
import surfeit.lab.InputRevisions;
import surfeit.lab.Laboratory;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.Segregation;
import surfeit.lab.SpotList;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.SpotSource;
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
            Route.get("/v1/samples/{sample}/segregation", Scope.READ).suffixed(AnswerForms.ALL)
                .parameters("by", "figure").to(this::segregation),
            Route.post("/v1/interpretations", Scope.READ).suffixed(AnswerForms.ALL)
                .takes(Form.JSON, Form.CSV).parameters("by", "figure").parameters(UploadOptions.PARAMETERS)
                .parameters(SampleOfAddress.PARAMETERS).to(this::interpret));
    }

    private void segregation(Exchange exchange) throws IOException {
        String name = exchange.path("sample");
        GroupBy by = by(exchange);
        AnswerForms.figure(exchange);
        InputRevisions inputs = laboratory.inputRevisions(name);
        if (!exchange.answer().unchanged(inputs.sample(), inputs.alloy().orElse(0))) {
            Segregation answer = laboratory.segregation(name, inputs, by);
            AnswerForms.answer(exchange, answer, laboratory.spotSource(answer.stored().orElseThrow()));
        }
    }

    private void interpret(Exchange exchange) throws IOException {
        GroupBy by = by(exchange);
        AnswerForms.figure(exchange);
        IntakeOptions options = UploadOptions.of(exchange);
        Form form = exchange.body().form();
        try (Body body = exchange.body().receive(form)) {
            Sample sample;
            List<Spot> spots;
            Optional<Caveat> leftOut = Optional.empty();
            if (form == Form.CSV) {
                sample = SampleOfAddress.read(exchange.parameters(), options.stated().unit());
                SpotList table = SpotList.read(body, UploadOptions.rows(form, options), sample);
                spots = table.spots();
                leftOut = table.leftOut();
            } else {
                SampleOfAddress.requireNone(exchange.parameters());
                InterpretationRequest request = InterpretationRequest.read(body, options);
                sample = request.sample();
                spots = request.spots();
            }
            SpotSource source = SpotSource.of(spots);
            AnswerForms.answer(exchange, answer(sample, source, by, form).with(leftOut), source, body.fileName());
        }
    }

    private Segregation answer(Sample sample, SpotSource source, GroupBy by, Form sent) {
        try {
            return laboratory.interpret(sample, source, by);
        } catch (ProblemException e) {
            throw sent == Form.JSON ? e.at("/sample/alloy", Problem.ALLOY_UNKNOWN) : e;
        }
    }

    private static GroupBy by(Exchange exchange) {
        return exchange.parameters().oneOf("by", GroupBy.values(), GroupBy::word).orElse(GroupBy.FEATURE);
    }
}
