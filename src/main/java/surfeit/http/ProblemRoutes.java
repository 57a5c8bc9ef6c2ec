package surfeit.http;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import surfeit.http.docs.HtmlPage;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** The pages that the {@code type} of a refusal points to. */
final class ProblemRoutes {

    List<Route> routes() {
        return List.of(
            Route.get("/v1/problems", Scope.OPEN).forms(Form.JSON, Form.HTML).to(this::list),
            Route.get("/v1/problems/{code}", Scope.OPEN).forms(Form.JSON, Form.HTML).to(this::read));
    }

    private void list(Exchange exchange) throws IOException {
        if (exchange.answer().unchanged(0)) {
            return;
        }
        if (exchange.form() == Form.HTML) {
            HtmlPage page = new HtmlPage("Problems");
            for (Problem problem : Problem.values()) {
                write(page, problem);
            }
            answer(exchange, page);
            return;
        }
        exchange.answer().json(200, json -> {
            json.writeStartObject();
            json.writeArrayFieldStart("items");
            for (Problem problem : Problem.values()) {
                write(json, problem);
            }
            json.writeEndArray();
            json.writeNullField("next");
            json.writeEndObject();
        });
    }

    private void read(Exchange exchange) throws IOException {
        String code = exchange.path("code");
        Problem problem = Problem.ofCode(code).orElseThrow(() ->
            new ProblemException(Problem.NOT_FOUND, "There is no problem \"" + code + "\"; /v1/problems lists them."));
        if (exchange.answer().unchanged(0)) {
            return;
        }
        if (exchange.form() == Form.HTML) {
            HtmlPage page = new HtmlPage(problem.title());
            write(page, problem);
            answer(exchange, page);
        } else {
            exchange.answer().json(200, json -> write(json, problem));
        }
    }

    private static void answer(Exchange exchange, HtmlPage page) throws IOException {
        String html = page.html();
        exchange.answer().header("Content-Security-Policy", PagePolicy.of(html));
        exchange.answer().bytes(exchange.form().contentType(), html.getBytes(StandardCharsets.UTF_8));
    }

    private static void write(HtmlPage page, Problem problem) {
        page.heading(2, problem.code(), problem.title());
        page.paragraph("Code " + problem.code() + ", status " + problem.status() + ".");
        page.paragraph(problem.explanation());
        page.paragraph("What to do: " + problem.whatToDo());
    }

    private static void write(JsonGenerator json, Problem problem) throws IOException {
        json.writeStartObject();
        json.writeStringField("code", problem.code());
        json.writeNumberField("status", problem.status());
        json.writeStringField("title", problem.title());
        json.writeStringField("explanation", problem.explanation());
        json.writeStringField("what_to_do", problem.whatToDo());
        json.writeStringField("type", ProblemJson.address(problem));
        json.writeEndObject();
    }
}
