package surfeit.http.docs;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The shapes of the document, each with what its keys mean. */
final class SchemaSection {
    private final OpenApiDocument document;
    private final HtmlPage page;

    SchemaSection(OpenApiDocument document, HtmlPage page) {
        this.document = document;
        this.page = page;
    }

    void write() {
        page.heading(2, "schemas", "Shapes");
        for (Map.Entry<String, JsonNode> schema : document.root().path("components").path("schemas").properties()) {
            page.heading(3, "schema-" + schema.getKey(), schema.getKey());
            page.paragraph(schema.getValue().path("description").asText());
            String explained = explained(schema.getValue());
            if (!explained.isEmpty()) {
                page.raw("<p>" + explained + "</p>\n");
            }
            if (!schema.getValue().has("properties")) {
                page.raw("<p>" + document.kind(schema.getValue()) + "</p>\n");
            }
            List<List<String>> rows = new ArrayList<>();
            collect(schema.getValue(), "", rows);
            if (!rows.isEmpty()) {
                page.table(List.of("key", "kind", "what"), rows);
            }
        }
    }

    /** The keys of an object, those of objects within it under their path. */
    private void collect(JsonNode schema, String before, List<List<String>> rows) {
        Set<String> required = new HashSet<>();
        schema.path("required").forEach(name -> required.add(name.asText()));
        for (Map.Entry<String, JsonNode> property : schema.path("properties").properties()) {
            JsonNode node = property.getValue();
            String name = before + property.getKey();
            rows.add(List.of(HtmlPage.code(name) + (required.contains(property.getKey()) ? " *" : ""),
                document.kind(node) + OpenApiDocument.fallback(node),
                HtmlPage.inline(description(node)) + " " + explained(node)));
            if (node.has("properties")) {
                collect(node, name + ".", rows);
            } else if (node.path("items").has("properties")) {
                collect(node.get("items"), name + "[].", rows);
            }
        }
    }

    /** A link to the shared file that says more: the JSON Schema of a shape, the meanings of words. */
    private static String explained(JsonNode node) {
        String address = node.has("x-words") ? "/shared/vocabulary/words.csv" : SharedSchemas.address(node);
        String name = address.substring(address.lastIndexOf('/') + 1);
        String what = node.has("x-words") ? "“" + node.get("x-words").asText() + "” in " + name
            : address.startsWith(SharedSchemas.FOLDER) ? "JSON Schema " + name : name;
        return address.isEmpty() ? "" : "<a href=\"" + HtmlPage.escaped(address) + "\">" + HtmlPage.escaped(what) + "</a>";
    }

    private String description(JsonNode node) {
        return node.has("description") ? node.get("description").asText().strip()
            : document.followed(node).path("description").asText().strip();
    }
}
