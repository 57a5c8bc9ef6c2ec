package surfeit.http.docs;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Makes one readable page of an OpenAPI document: every route, parameter, header, answer, example and shape. */
final class OpenApiPage {
    private static final ObjectMapper JSON = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private final OpenApiDocument document;
    private final HtmlPage page;

    OpenApiPage(OpenApiDocument document) {
        this.document = document;
        this.page = new HtmlPage(document.root().path("info").path("title").asText());
    }

    String html() {
        JsonNode info = document.root().path("info");
        page.heading(1, "", info.path("title").asText() + " " + info.path("version").asText());
        page.paragraph(info.path("summary").asText());
        page.paragraph(info.path("description").asText());
        page.raw("<p><a href=\"/openapi.json\">openapi.json</a> · <a href=\"/openapi.yaml\">openapi.yaml</a> · "
            + HtmlPage.link("answers", "Answers") + " · " + HtmlPage.link("schemas", "Shapes") + " · "
            + HtmlPage.link("examples", "Examples") + " · <a href=\"/v1/problems\">Problems</a></p>\n");
        navigation();
        document.root().path("tags").forEach(this::tag);
        sharedAnswers();
        new SchemaSection(document, page).write();
        exampleSection();
        return page.html();
    }

    private void navigation() {
        page.raw("<nav>\n");
        for (JsonNode tag : document.root().path("tags")) {
            String name = tag.path("name").asText();
            page.raw("<h4>" + HtmlPage.link("tag-" + name, HtmlPage.escaped(name)) + "</h4>\n<ul>\n");
            for (OpenApiDocument.Operation operation : document.operations(name)) {
                String route = HtmlPage.code(operation.method() + " " + operation.path());
                page.raw("<li>" + HtmlPage.link(operation.anchor(), route) + "</li>\n");
            }
            page.raw("</ul>\n");
        }
        page.raw("</nav>\n");
    }

    private void tag(JsonNode tag) {
        String name = tag.path("name").asText();
        page.heading(2, "tag-" + name, name);
        page.paragraph(tag.path("description").asText());
        document.operations(name).forEach(this::operation);
    }

    private void operation(OpenApiDocument.Operation operation) {
        JsonNode node = operation.node();
        page.heading(3, operation.anchor(), node.path("summary").asText());
        page.raw("<p class=\"method\">" + HtmlPage.code(operation.method() + " " + operation.path())
            + " <span class=\"note\">scope: " + HtmlPage.escaped(node.path("x-scope").asText()) + "</span></p>\n");
        page.paragraph(node.path("description").asText());
        parameters(operation.parameters());
        if (node.has("requestBody")) {
            JsonNode body = document.followed(node.get("requestBody"));
            page.heading(4, "", "Body");
            page.paragraph(body.path("description").asText());
            content(body.path("content"));
        }
        page.heading(4, "", "Answers");
        List<List<String>> shared = new ArrayList<>();
        for (Map.Entry<String, JsonNode> answer : node.path("responses").properties()) {
            JsonNode followed = document.followed(answer.getValue());
            if (answer.getValue().has("$ref")) {
                String anchor = "answer-" + OpenApiDocument.name(answer.getValue());
                shared.add(List.of(HtmlPage.code(answer.getKey()),
                    HtmlPage.link(anchor, HtmlPage.inline(followed.path("description").asText()))));
            } else {
                answer(HtmlPage.code(answer.getKey()), followed);
            }
        }
        page.table(List.of("status", "answer"), shared);
    }

    /** Answers that several routes give. */
    private void sharedAnswers() {
        page.heading(2, "answers", "Answers of several routes");
        for (Map.Entry<String, JsonNode> answer : document.root().path("components").path("responses").properties()) {
            page.raw("<div id=\"answer-" + answer.getKey() + "\">");
            answer("", answer.getValue());
            page.raw("</div>\n");
        }
    }

    private void parameters(List<JsonNode> parameters) {
        if (parameters.isEmpty()) {
            return;
        }
        page.heading(4, "", "Parameters");
        List<List<String>> rows = new ArrayList<>();
        for (JsonNode parameter : parameters) {
            JsonNode schema = parameter.path("schema");
            rows.add(List.of(HtmlPage.code(parameter.path("name").asText()), parameter.path("in").asText(),
                document.kind(schema) + OpenApiDocument.fallback(schema),
                HtmlPage.inline(parameter.path("description").asText().strip()),
                parameter.has("example") ? HtmlPage.code(parameter.get("example").asText()) : ""));
        }
        page.table(List.of("name", "in", "kind", "what", "example"), rows);
    }

    private void answer(String status, JsonNode answer) {
        page.raw("<details open><summary>" + status + " " + HtmlPage.inline(answer.path("description").asText())
            + "</summary>\n");
        List<List<String>> headers = new ArrayList<>();
        for (Map.Entry<String, JsonNode> header : answer.path("headers").properties()) {
            JsonNode node = document.followed(header.getValue());
            headers.add(List.of(HtmlPage.code(header.getKey()), HtmlPage.inline(node.path("description").asText()),
                HtmlPage.code(node.path("example").asText())));
        }
        if (!headers.isEmpty()) {
            page.table(List.of("header", "what", "example"), headers);
        }
        content(answer.path("content"));
        page.raw("</details>\n");
    }

    private void content(JsonNode content) {
        for (Map.Entry<String, JsonNode> media : content.properties()) {
            page.raw("<p>" + HtmlPage.code(media.getKey()) + ": " + document.kind(media.getValue().path("schema"))
                + "</p>\n");
            if (media.getValue().has("example")) {
                page.example("Example", text(media.getValue().get("example")));
            }
            examples(media.getValue().path("examples"));
        }
    }

    /** Examples that stand elsewhere are linked, the others shown. */
    private void examples(JsonNode examples) {
        List<String> links = new ArrayList<>();
        for (Map.Entry<String, JsonNode> example : examples.properties()) {
            if (example.getValue().has("$ref")) {
                links.add(HtmlPage.link("example-" + OpenApiDocument.name(example.getValue()),
                    HtmlPage.escaped(example.getKey())));
            } else {
                page.example("Example: " + example.getKey(), text(example.getValue().path("value")));
            }
        }
        if (!links.isEmpty()) {
            page.raw("<p>Examples: " + String.join(", ", links) + "</p>\n");
        }
    }

    private void exampleSection() {
        page.heading(2, "examples", "Examples");
        for (Map.Entry<String, JsonNode> example : document.root().path("components").path("examples").properties()) {
            page.heading(3, "example-" + example.getKey(), example.getValue().path("summary").asText());
            page.example(example.getKey(), text(example.getValue().path("value")));
        }
    }

    private static String text(JsonNode example) {
        try {
            return example.isTextual() ? example.asText() : JSON.writeValueAsString(example);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("An example of openapi.yaml cannot be written as JSON.", e);
        }
    }
}
