package surfeit.http;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import surfeit.http.json.CorrectionJson;
import surfeit.http.json.JsonFormat;
import surfeit.http.json.ReasonJson;
import surfeit.http.json.SpotDocuments;
import surfeit.intake.IntakeOptions;
import surfeit.lab.Laboratory;
import surfeit.lab.Page;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.SpotFilter;
import surfeit.lab.StoredSample;
import surfeit.lab.StoredSpot;
import surfeit.segregation.answer.Verdict;

/** Spots on record: lists, one, its revisions, correction and withdrawal. */
final class SpotRoutes {
    private final Laboratory laboratory;

    SpotRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    List<Route> routes() {
        return List.of(
            Route.get("/v1/samples/{sample}/spots", Scope.READ).suffixed(Form.JSON, Form.CSV, Form.NDJSON)
                .parameters("feature", "particle", "session", "verdict", "withdrawn", "revision", "page_size", "cursor")
                .to(this::list),
            Route.get("/v1/spots/{id}", Scope.READ).to(this::read),
            Route.get("/v1/spots/{id}/revisions", Scope.READ).to(this::revisions),
            Route.post("/v1/spots/{id}/corrections", Scope.CORRECT).parameters("time_zone").to(this::correct),
            Route.post("/v1/spots/{id}/withdrawal", Scope.CORRECT).to(this::withdraw));
    }

    private void list(Exchange exchange) throws IOException {
        String sample = exchange.path("sample");
        Parameters parameters = exchange.parameters();
        SpotFilter filter = new SpotFilter(parameters.text("feature"), parameters.text("particle"),
            parameters.text("session"), Optional.empty(), Optional.empty(), parameters.flag("withdrawn"));
        Optional<Verdict> verdict = parameters.oneOf("verdict", ResultQuery.screened(), Verdict::word);
        StoredSample asOf = asOf(sample, parameters, verdict);
        // the screening is against the alloy, which changes without the sample
        if (verdict.isEmpty() ? exchange.answer().unchanged(asOf.revision())
            : exchange.answer().unchanged(asOf.revision(), laboratory.inputRevisions(sample).alloy().orElse(0))) {
            return;
        }
        SpotSelection wanted = new SpotSelection(laboratory, asOf, filter, verdict);
        switch (exchange.form()) {
            case CSV -> csv(exchange, wanted);
            case NDJSON -> ndjson(exchange, wanted);
            default -> {
                Page<StoredSpot> page = wanted.page(exchange.page());
                Optional<String> next = exchange.next(page.next());
                exchange.answer().json(200, json -> SpotDocuments.write(json, page.items(), next));
            }
        }
    }

    /** The sample now, or as it was at a revision. */
    private StoredSample asOf(String sample, Parameters parameters, Optional<Verdict> verdict) {
        if (parameters.text("revision").isEmpty()) {
            return laboratory.sample(sample);
        }
        if (verdict.isPresent()) {
            throw new ProblemException(Problem.VALUE_OUT_OF_RANGE,
                "Expected verdict or revision: verdict screens the spots of today.");
        }
        return laboratory.sample(sample, parameters.wholeNumber("revision", 1, 1, Long.MAX_VALUE));
    }

    private static void csv(Exchange exchange, SpotSelection wanted) throws IOException {
        try (SpotCsv csv = new SpotCsv(exchange.answer().stream(Form.CSV.contentType()))) {
            wanted.forEach(csv::write);
        }
    }

    private static void ndjson(Exchange exchange, SpotSelection wanted) throws IOException {
        try (OutputStream out = exchange.answer().stream(Form.NDJSON.contentType());
             JsonGenerator json = JsonFormat.lines(out)) {
            wanted.forEach(spot -> {
                try {
                    SpotDocuments.write(json, spot);
                    json.writeRaw('\n');
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        }
    }

    private void read(Exchange exchange) throws IOException {
        answer(exchange, laboratory.spot(exchange.path("id")));
    }

    private void revisions(Exchange exchange) throws IOException {
        List<StoredSpot> revisions = laboratory.spotRevisions(exchange.path("id"));
        if (!exchange.answer().unchanged(revisions.get(revisions.size() - 1).revision())) {
            exchange.answer().json(200, json -> SpotDocuments.write(json, revisions, Optional.empty()));
        }
    }

    private void correct(Exchange exchange) throws IOException {
        IntakeOptions options = UploadOptions.of(exchange);
        try (Body body = exchange.body().receive()) {
            String reason = CorrectionJson.reason(body.open());
            answer(exchange, laboratory.correct(exchange.path("id"), reason, exchange.expectation(),
                (present, sample) -> {
                try {
                    return CorrectionJson.apply(body.open(), present, options.withULevel(sample.judgement().uLevel()));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }, exchange.occasion()));
        }
    }

    private void withdraw(Exchange exchange) throws IOException {
        String reason;
        try (Body body = exchange.body().receive()) {
            reason = ReasonJson.read(body.open());
        }
        answer(exchange, laboratory.withdraw(exchange.path("id"), reason, exchange.expectation(), exchange.occasion()));
    }

    private static void answer(Exchange exchange, StoredSpot spot) throws IOException {
        if (!exchange.answer().unchanged(spot.revision())) {
            exchange.answer().json(200, json -> SpotDocuments.write(json, spot));
        }
    }
}
