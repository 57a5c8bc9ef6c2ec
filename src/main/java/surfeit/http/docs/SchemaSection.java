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
            String file = SharedSchemas.address(schema.getValue());
            if (!file.isEmpty()) {
                page.raw("<p>As JSON Schema: <a href=\"" + HtmlPage.escaped(file) + "\">" + HtmlPage.escaped(file) + "</a></p>\n");
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
                document.kind(node) + OpenApiDocument.fallback(node), HtmlPage.inline(description(node))));
            if (node.has("properties")) {
                collect(node, name + ".", rows);
            } else if (node.path("items").has("properties")) {
                collect(node.get("items"), name + "[].", rows);
            }
        }
    }

    private String description(JsonNode node) {
        return node.has("description") ? node.get("description").asText().strip()
            : document.followed(node).path("description").asText().strip();
    }
}
