package surfeit.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonMetaSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.NonValidationKeyword;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The OpenAPI document as tests use it: finds the operation of a request and validates bodies against its shapes.
 *
 * <p>Shapes of answers are open, since answers may grow keys; here every object is closed, so that no key goes
 * undocumented.
 */
final class OpenApi {
    static final OpenApi DOCUMENT = new OpenApi();
    private static final String ID = "https://surfeit.test/openapi.json";
    private static final ObjectMapper JSON = new ObjectMapper();

    private final JsonNode root;
    private final JsonSchemaFactory schemas;
    private final SchemaValidatorsConfig config;

    private OpenApi() {
        try (InputStream in = OpenApi.class.getResourceAsStream("/openapi/openapi.json")) {
            root = new ObjectMapper().readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        JsonNode closed = root.deepCopy();
        close(closed.path("components").path("schemas"));
        JsonMetaSchema.Builder dialect = JsonMetaSchema.builder(JsonMetaSchema.getV202012());
        closed.fieldNames().forEachRemaining(name -> dialect.keyword(new NonValidationKeyword(name)));
        List.of("externalDocs", "x-words").forEach(name -> dialect.keyword(new NonValidationKeyword(name)));
        schemas = JsonSchemaFactory.builder(JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012))
            .metaSchema(dialect.build())
            .schemaLoaders(loaders -> loaders.schemas(Map.of(ID, closed.toString())))
            .build();
        config = SchemaValidatorsConfig.builder().formatAssertionsEnabled(true).build();
    }

    private static void close(JsonNode node) {
        if (node.isObject() && node.has("properties") && !node.has("additionalProperties")) {
            ((ObjectNode) node).put("additionalProperties", false);
        }
        node.forEach(OpenApi::close);
    }

    /** One operation with the pointer that leads to it. */
    record Operation(String method, String path, String pointer, JsonNode node) {
    }

    JsonNode root() {
        return root;
    }

    JsonNode followed(JsonNode node) {
        return node.has("$ref") ? followed(root.at(node.get("$ref").asText().substring(1))) : node;
    }

    List<Operation> operations() {
        List<Operation> found = new ArrayList<>();
        for (Map.Entry<String, JsonNode> path : root.path("paths").properties()) {
            for (Map.Entry<String, JsonNode> entry : path.getValue().properties()) {
                if (!entry.getKey().equals("parameters")) {
                    found.add(new Operation(entry.getKey().toUpperCase(java.util.Locale.ROOT), path.getKey(),
                        "/paths/" + escaped(path.getKey()) + "/" + entry.getKey(), entry.getValue()));
                }
            }
        }
        return found;
    }

    /** The operation that answers a request; a literal path goes before one with parameters, a suffix before none. */
    Optional<Operation> operation(String method, String address) {
        return operations().stream().filter(operation -> operation.method().equals(method) && fits(operation.path(),
            address))
            .min(Comparator.<Operation>comparingLong(operation -> braces(operation.path()))
                .thenComparing(operation -> operation.path().length(), Comparator.reverseOrder()));
    }

    boolean hasPath(String address) {
        return operations().stream().anyMatch(operation -> fits(operation.path(), address));
    }

    private static long braces(String path) {
        return path.chars().filter(c -> c == '{').count();
    }

    private static boolean fits(String path, String address) {
        String pattern = path.equals("/shared/{path}") ? "/shared/.+" : path.replace(".", "\\.")
            .replaceAll("\\{[^}]+\\}", "[^/]+");
        return address.matches(pattern);
    }

    /** What is wrong with a JSON value by the shape at a pointer; empty where nothing is. */
    Set<ValidationMessage> faults(String pointer, JsonNode value) {
        return schemas.getSchema(SchemaLocation.of(ID + "#" + pointer), config).validate(value);
    }

    /** The pointer with every reference on its way followed, since a reference stands for what it names. */
    String resolved(String pointer) {
        JsonNode now = root;
        String at = "";
        for (String step : Arrays.stream(pointer.substring(1).split("/")).toList()) {
            while (now.has("$ref")) {
                at = now.get("$ref").asText().substring(1);
                now = root.at(at);
            }
            at += "/" + step;
            now = root.at(at);
        }
        return at;
    }

    static String escaped(String step) {
        return step.replace("~", "~0").replace("/", "~1");
    }

    static JsonNode parse(String text) {
        try {
            return JSON.readTree(text);
        } catch (IOException e) {
            throw new UncheckedIOException(text, e);
        }
    }
}
