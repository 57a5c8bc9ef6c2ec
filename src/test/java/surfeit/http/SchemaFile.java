package surfeit.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.DisallowUnknownKeywordFactory;
import com.networknt.schema.JsonMetaSchema;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaId;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** A file of {@code shared/schemas} as another tool takes it: alone, by the rules of JSON Schema 2020-12 and no others. */
record SchemaFile(String name, JsonNode content, JsonSchema schema) {
    static final Path FOLDER = Path.of("shared", "schemas");
    private static final SchemaValidatorsConfig WITH_FORMATS =
        SchemaValidatorsConfig.builder().formatAssertionsEnabled(true).build();
    private static final JsonSchemaFactory STRICT = JsonSchemaFactory.builder(
        JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012))
        .metaSchema(JsonMetaSchema.builder(JsonMetaSchema.getV202012())
            .unknownKeywordFactory(DisallowUnknownKeywordFactory.getInstance()).build())
        .build();

    static List<String> names() {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static SchemaFile read(String name) {
        try {
            return of(name, Files.readString(FOLDER.resolve(name)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static SchemaFile of(String name, String text) {
        JsonSchema schema = STRICT.getSchema(text, WITH_FORMATS);
        schema.initializeValidators();
        return new SchemaFile(name, OpenApi.parse(text), schema);
    }

    /** What is wrong with a value by this schema; empty where nothing is. */
    Set<ValidationMessage> faults(JsonNode value) {
        return schema.validate(value);
    }

    /** What is wrong with the schema itself by the schema of all schemas. */
    Set<ValidationMessage> ownFaults() {
        return STRICT.getSchema(SchemaLocation.of(SchemaId.V202012), WITH_FORMATS).validate(content);
    }

    /** The keys a value must have; of a choice of shapes, those of the first. */
    List<String> required() {
        JsonNode shape = content.has("anyOf") && !content.has("properties")
            ? content.at(content.at("/anyOf/0/$ref").asText().substring(1)) : content;
        return shape.path("required").valueStream().map(JsonNode::asText).toList();
    }

    /** True for what is sent: a key that it does not know is refused. */
    boolean refusesUnknownKeys() {
        return content.path("additionalProperties").isBoolean();
    }
}
