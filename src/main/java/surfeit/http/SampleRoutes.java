package surfeit.http;

import java.io.IOException;
import java.util.List;
import surfeit.http.json.SampleDocuments;
import surfeit.http.json.SampleJson;
import surfeit.lab.Change;
import surfeit.lab.Laboratory;
import surfeit.lab.Page;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.SampleFilter;
import surfeit.lab.SampleRevision;
import surfeit.lab.StoredSample;
import surfeit.spot.Sample;

/** Samples: list, state, read, and their revisions. */
final class SampleRoutes {
    private final Laboratory laboratory;

    SampleRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    List<Route> routes() {
        return List.of(
            Route.get("/v1/samples", Scope.READ).parameters("alloy", "q", "page_size", "cursor").to(this::list),
            Route.get("/v1/samples/{sample}", Scope.READ).to(this::read),
            Route.put("/v1/samples/{sample}", Scope.WRITE).to(this::put),
            Route.get("/v1/samples/{sample}/revisions", Scope.READ).parameters("page_size", "cursor")
                .to(this::revisions),
            Route.get("/v1/samples/{sample}/revisions/{n}", Scope.READ).to(this::revision));
    }

    private void list(Exchange exchange) throws IOException {
        Parameters parameters = exchange.parameters();
        SampleFilter filter = new SampleFilter(parameters.text("alloy"), parameters.text("q"));
        if (exchange.answer().unchanged(laboratory.eventLog().range().last())) {
            return;
        }
        Page<StoredSample> page = laboratory.samples(filter, exchange.page());
        var next = exchange.next(page.next());
        exchange.answer().json(200, json -> SampleDocuments.write(json, page, next));
    }

    private void read(Exchange exchange) throws IOException {
        StoredSample stored = laboratory.sample(exchange.path("sample"));
        if (!exchange.answer().unchanged(stored.revision())) {
            exchange.answer().json(200, json -> SampleDocuments.write(json, stored));
        }
    }

    private void put(Exchange exchange) throws IOException {
        String name = exchange.path("sample");
        Sample sample;
        try (Body body = exchange.body().receive()) {
            sample = SampleJson.read(body.open());
        }
        Change<StoredSample> change = describe(exchange, name, sample);
        exchange.answer().unchanged(change.now().revision());
        exchange.answer().header("Location", "/v1/samples/" + name);
        exchange.answer().json(change.kind() == Change.Kind.CREATED ? 201 : 200,
            json -> SampleDocuments.write(json, change.now()));
    }

    private Change<StoredSample> describe(Exchange exchange, String name, Sample sample) {
        try {
            return laboratory.describe(name, sample, exchange.expectation(), exchange.occasion());
        } catch (ProblemException e) {
            throw e.at("/alloy", Problem.ALLOY_UNKNOWN);
        }
    }

    private void revisions(Exchange exchange) throws IOException {
        String name = exchange.path("sample");
        if (exchange.answer().unchanged(laboratory.sample(name).revision())) {
            return;
        }
        Page<SampleRevision> page = laboratory.sampleRevisions(name, exchange.page());
        var next = exchange.next(page.next());
        exchange.answer().json(200, json -> SampleDocuments.writeRevisions(json, name, page.items(), next));
    }

    private void revision(Exchange exchange) throws IOException {
        String name = exchange.path("sample");
        StoredSample stored = laboratory.sample(name, number(exchange.path("n")));
        if (!exchange.answer().unchanged(stored.revision())) {
            exchange.answer().json(200, json -> SampleDocuments.write(json, stored));
        }
    }

    private static long number(String text) {
        try {
            return Long.parseLong(text);
        } catch (NumberFormatException e) {
            throw new ProblemException(Problem.NOT_FOUND, "Revisions are numbered from 1; there is no revision \""
                + text + "\".");
        }
    }
}
