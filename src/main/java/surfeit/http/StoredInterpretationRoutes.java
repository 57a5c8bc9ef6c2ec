package surfeit.http;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import surfeit.http.json.EmptyJson;
import surfeit.http.json.StoredInterpretationDocuments;
import surfeit.lab.FrozenAnswer;
import surfeit.lab.Interpretations;
import surfeit.lab.KeptAnswer;
import surfeit.lab.Laboratory;
import surfeit.lab.MadeWith;
import surfeit.lab.Occasion;
import surfeit.lab.Page;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.RepeatKey;
import surfeit.lab.StoredInterpretation;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.MethodSettings;

/** Answers that a lab freezes, and what became of their inputs since. */
final class StoredInterpretationRoutes {
    private final Laboratory laboratory;

    StoredInterpretationRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    List<Route> routes() {
        return List.of(
            Route.post("/v1/samples/{sample}/interpretations", Scope.WRITE).parameters("by").to(this::freeze),
            Route.get("/v1/samples/{sample}/interpretations", Scope.READ).parameters("page_size", "cursor")
                .to(this::list),
            Route.get("/v1/interpretations/{id}", Scope.READ).suffixed(Form.JSON, Form.CSV, Form.MARKDOWN)
                .to(this::read));
    }

    private void freeze(Exchange exchange) throws IOException {
        String sample = exchange.path("sample");
        GroupBy by = exchange.parameters().oneOf("by", GroupBy.values(), GroupBy::word).orElse(GroupBy.FEATURE);
        Occasion occasion = exchange.occasion();
        Function<Laboratory, KeptAnswer> work = lab ->
            answer(lab.interpretations(), lab.interpretations().freeze(sample, by,
                (answer, spots) -> frozen(new AnswerFile(answer, spots, occasion.when()), exchange.facts().version()),
                occasion));
        try (Body body = exchange.body().receive(Form.JSON)) {
            if (!body.isEmpty()) {
                exchange.body().form();
                EmptyJson.read(body.open());
            }
            Optional<RepeatKey> key = exchange.repeatKey(body);
            exchange.answer().kept(key.isPresent() ? laboratory.once(key.get(), occasion, work) : work.apply(laboratory));
        }
    }

    private static FrozenAnswer frozen(AnswerFile answer, String programVersion) {
        try {
            ByteArrayOutputStream json = new ByteArrayOutputStream();
            answer.json(json);
            return new FrozenAnswer(
                MadeWith.of(MethodSettings.NAME, MethodSettings.VERSION, programVersion, AnswerFile.TABLES),
                new TreeMap<>(Map.of(name(Form.JSON), json.toString(StandardCharsets.UTF_8),
                    name(Form.CSV), answer.csv(),
                    name(Form.MARKDOWN), answer.markdown())));
        } catch (IOException e) {
            throw new UncheckedIOException("Writing to memory failed.", e);
        }
    }

    private static KeptAnswer answer(Interpretations kept, StoredInterpretation stored) {
        byte[] body = Answer.bytes(json ->
            StoredInterpretationDocuments.write(json, stored, kept.text(stored.id(), name(Form.JSON))));
        return new KeptAnswer(201, Map.of("Location", StoredInterpretationDocuments.address(stored)), body);
    }

    private void list(Exchange exchange) throws IOException {
        String sample = exchange.path("sample");
        laboratory.sample(sample);
        if (exchange.answer().unchanged(laboratory.auditLog().head().count())) {
            return;
        }
        Page<StoredInterpretation> page = laboratory.interpretations().list(sample, exchange.page());
        Optional<String> next = exchange.next(page.next());
        exchange.answer().json(200, json -> StoredInterpretationDocuments.write(json, page.items(), next));
    }

    /** What surrounds the frozen answer changes once, when it turns stale; the answer by itself never does. */
    private void read(Exchange exchange) throws IOException {
        Interpretations kept = laboratory.interpretations();
        StoredInterpretation stored = kept.find(exchange.path("id"));
        Form form = exchange.form();
        if (form == Form.JSON) {
            if (!exchange.answer().unchanged(stored.stale().isPresent() ? 2 : 1)) {
                String answer = kept.text(stored.id(), name(form));
                exchange.answer().json(200, json -> StoredInterpretationDocuments.write(json, stored, answer));
            }
            return;
        }
        if (!exchange.answer().unchangedContent(stored.checksums().getOrDefault(name(form), ""))) {
            exchange.answer().header("Link", "<" + StoredInterpretationDocuments.address(stored) + ">; rel=\"describedby\", <"
                + StoredInterpretationDocuments.presentAnswer(stored) + ">; rel=\"latest-version\"");
            exchange.answer().text(kept.text(stored.id(), name(form)));
        }
    }

    /** The form's name on record: {@code md}. */
    private static String name(Form form) {
        return form.suffix().substring(1);
    }
}
