package surfeit.http.docs;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** An OpenAPI document with its inner references followed. Immutable. */
final class OpenApiDocument {
    private static final List<String> METHODS = List.of("get", "put", "post", "delete");

    private final JsonNode root;

    OpenApiDocument(JsonNode root) {
        this.root = root;
    }

    /** One operation: method and path, with the parameters of its path added to its own. */
    record Operation(String method, String path, JsonNode node, List<JsonNode> parameters) {
        String anchor() {
            return node.path("operationId").asText();
        }
    }

    JsonNode root() {
        return root;
    }

    /** The node itself, or what it refers to. */
    JsonNode followed(JsonNode node) {
        JsonNode now = node;
        while (now.has("$ref")) {
            JsonNode target = root.at(now.get("$ref").asText().substring(1));
            if (target.isMissingNode()) {
                throw new IllegalStateException("openapi.yaml refers to " + now.get("$ref").asText()
                    + ", which is not there.");
            }
            now = target;
        }
        return now;
    }

    /** The last step of the reference that a node is: the name of what it refers to. */
    static String name(JsonNode reference) {
        String path = reference.get("$ref").asText();
        return path.substring(path.lastIndexOf('/') + 1);
    }

    /** Every operation of a tag, in the order of the document. */
    List<Operation> operations(String tag) {
        List<Operation> found = new ArrayList<>();
        for (Map.Entry<String, JsonNode> path : root.path("paths").properties()) {
            for (String method : METHODS) {
                JsonNode node = path.getValue().path(method);
                if (!node.isMissingNode() && node.path("tags").path(0).asText().equals(tag)) {
                    List<JsonNode> parameters = new ArrayList<>();
                    path.getValue().path("parameters").forEach(parameter -> parameters.add(followed(parameter)));
                    node.path("parameters").forEach(parameter -> parameters.add(followed(parameter)));
                    found.add(new Operation(method.toUpperCase(Locale.ROOT), path.getKey(), node, parameters));
                }
            }
        }
        return found;
    }

    /** A schema in a few words: its name where it has one, else its kind. */
    String kind(JsonNode schema) {
        if (schema.has("$ref")) {
            return HtmlPage.link("schema-" + name(schema), HtmlPage.escaped(name(schema)));
        }
        if (schema.has("const")) {
            return HtmlPage.code(schema.get("const").asText());
        }
        if (schema.has("enum")) {
            return words(schema.get("enum"));
        }
        for (String choice : List.of("oneOf", "anyOf")) {
            if (schema.has(choice) && !schema.has("properties")) {
                List<String> kinds = new ArrayList<>();
                schema.get(choice).forEach(each -> kinds.add(kind(each)));
                return String.join(" or ", kinds);
            }
        }
        JsonNode type = schema.path("type");
        if (type.isArray()) {
            List<String> types = new ArrayList<>();
            type.forEach(each -> types.add(each.asText().equals("array") ? "list of " + kind(schema.path("items"))
                : each.asText()));
            return String.join(" or ", types);
        }
        if (type.asText().equals("array")) {
            return "list of " + kind(schema.path("items"));
        }
        if (type.asText().equals("object") && schema.path("additionalProperties").isObject()) {
            return "object of " + kind(schema.get("additionalProperties"));
        }
        return HtmlPage.escaped(type.asText("anything")) + limits(schema);
    }

    /** The value that holds where none is given, as the end of a kind; empty where there is none. */
    static String fallback(JsonNode schema) {
        return schema.has("default") ? "; default " + HtmlPage.code(schema.get("default").toString()) : "";
    }

    private static String words(JsonNode list) {
        List<String> words = new ArrayList<>();
        list.forEach(word -> words.add(HtmlPage.code(word.asText())));
        return String.join(", ", words);
    }

    private static String limits(JsonNode schema) {
        StringBuilder text = new StringBuilder();
        limit(text, schema, "exclusiveMinimum", " above ");
        limit(text, schema, "minimum", " from ");
        limit(text, schema, "exclusiveMaximum", " below ");
        limit(text, schema, "maximum", " to ");
        return text.toString();
    }

    private static void limit(StringBuilder text, JsonNode schema, String key, String words) {
        if (schema.has(key)) {
            text.append(words).append(schema.get(key).asText());
        }
    }
}
