package surfeit.http.docs;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The shapes of an OpenAPI document as JSON Schemas (2020-12) that need nothing beside them: one file per shape that names
 * its file as {@code externalDocs}.
 *
 * <p>Shapes of OpenAPI 3.1 are JSON Schemas but for a few words of its own, which are turned or left off. A word that is
 * in neither list stops the build, so that none gets into a file that others read by the rules of JSON Schema alone.
 *
 * <p>Sources: JSON Schema Core and Validation, draft 2020-12; OpenAPI 3.1, "Schema Object" (from memory).
 */
final class SharedSchemas {
    private static final String DIALECT = "https://json-schema.org/draft/2020-12/schema";
    private static final String COMPONENT = "#/components/schemas/";
    static final String FOLDER = "/shared/schemas/";
    private static final Pattern ADDRESS = Pattern.compile(FOLDER + "([a-z-]+\\.json)");
    /** Words whose value is a schema, a list of schemas, or schemas by name. */
    private static final Set<String> SCHEMAS = Set.of("items", "additionalProperties", "propertyNames", "contains", "not",
        "if", "then", "else", "oneOf", "anyOf", "allOf", "prefixItems");
    private static final Set<String> SCHEMAS_BY_NAME = Set.of("properties", "patternProperties", "dependentSchemas");
    /** Words whose value is taken as it is. */
    private static final Set<String> TAKEN = Set.of("title", "type", "enum", "const", "default", "examples",
        "required", "dependentRequired", "pattern", "format", "minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum",
        "multipleOf", "minLength", "maxLength", "minItems", "maxItems", "uniqueItems", "minContains", "maxContains",
        "minProperties", "maxProperties", "readOnly", "writeOnly", "deprecated");
    /** Words of OpenAPI that check nothing. */
    private static final Set<String> LEFT_OFF = Set.of("externalDocs", "discriminator", "xml");
    /** Formats of OpenAPI, which strict readers of JSON Schema refuse. */
    private static final Set<String> FORMATS_LEFT_OFF = Set.of("int32", "int64", "float", "double", "password");

    private final JsonNode shapes;

    SharedSchemas(JsonNode openApi) {
        this.shapes = openApi.path("components").path("schemas");
    }

    /** Every schema by the name of its file. */
    Map<String, ObjectNode> byFile() {
        Map<String, ObjectNode> files = new TreeMap<>();
        for (Map.Entry<String, JsonNode> shape : shapes.properties()) {
            Matcher address = ADDRESS.matcher(address(shape.getValue()));
            if (address.matches()) {
                files.put(address.group(1), whole(shape.getKey(), address.group()));
            }
        }
        return files;
    }

    /** The shared file that a shape, or a word within it, points to; empty where it has none. */
    static String address(JsonNode shape) {
        return shape.path("externalDocs").path("url").asText();
    }

    private ObjectNode whole(String name, String address) {
        Map<String, JsonNode> beside = new TreeMap<>();
        ObjectNode schema = new ObjectMapper().createObjectNode().put("$schema", DIALECT).put("$id", address);
        schema.setAll((ObjectNode) turned(shapes.get(name), beside));
        if (!beside.isEmpty()) {
            schema.putObject("$defs").setAll(beside);
        }
        return schema;
    }

    /** A schema in words of JSON Schema; shapes it refers to are put beside it. */
    private JsonNode turned(JsonNode schema, Map<String, JsonNode> beside) {
        if (schema.isArray()) {
            ArrayNode list = new ObjectMapper().createArrayNode();
            schema.forEach(each -> list.add(turned(each, beside)));
            return list;
        }
        if (!schema.isObject()) {
            return schema;
        }
        ObjectNode turned = new ObjectMapper().createObjectNode();
        for (Map.Entry<String, JsonNode> word : schema.properties()) {
            put(turned, word.getKey(), word.getValue(), beside);
        }
        return turned;
    }

    private void put(ObjectNode schema, String word, JsonNode value, Map<String, JsonNode> beside) {
        if (word.equals("$ref")) {
            schema.put(word, "#/$defs/" + besideIt(value.asText(), beside));
        } else if (word.equals("description")) {
            schema.put(word, value.asText().strip().replaceAll("(?<!\n)\n(?!\n)", " "));
        } else if (word.equals("example")) {
            schema.putArray("examples").add(value);
        } else if (SCHEMAS.contains(word)) {
            schema.set(word, turned(value, beside));
        } else if (SCHEMAS_BY_NAME.contains(word)) {
            ObjectNode named = schema.putObject(word);
            value.properties().forEach(each -> named.set(each.getKey(), turned(each.getValue(), beside)));
        } else if (TAKEN.contains(word)) {
            if (!word.equals("format") || !FORMATS_LEFT_OFF.contains(value.asText())) {
                schema.set(word, value);
            }
        } else if (!LEFT_OFF.contains(word) && !word.startsWith("x-")) {
            throw new IllegalStateException("openapi.yaml has the word \"" + word + "\" in a schema, which JSON Schema "
                + "2020-12 does not know.");
        }
    }

    private String besideIt(String reference, Map<String, JsonNode> beside) {
        String name = reference.startsWith(COMPONENT) ? reference.substring(COMPONENT.length()) : "";
        if (!shapes.has(name)) {
            throw new IllegalStateException("openapi.yaml refers to " + reference + ", which is not a shape of it.");
        }
        if (!beside.containsKey(name)) {
            beside.put(name, shapes.get(name)); // so that a shape that holds itself is gone through once
            beside.put(name, turned(shapes.get(name), beside));
        }
        return name;
    }
}
