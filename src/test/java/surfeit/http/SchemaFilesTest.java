package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.InvalidSchemaException;
import com.networknt.schema.JsonSchemaException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The JSON Schemas of the shared folder are those of the OpenAPI document, and every document of the project fits them.
 *
 * <p>After a change of the document, {@code mvn test -Dtest=SchemaFilesTest -Dsurfeit.schemas.write=true} writes them
 * anew from what the build made of it.
 */
class SchemaFilesTest {
    private static final JsonNode ROOT = OpenApi.DOCUMENT.root();

    static List<String> names() {
        return SchemaFile.names();
    }

    @BeforeAll
    static void writeWhereAsked() throws IOException {
        if (Boolean.getBoolean("surfeit.schemas.write")) {
            for (String name : SchemaFile.names()) {
                Files.delete(SchemaFile.FOLDER.resolve(name));
            }
            for (Map.Entry<String, String> made : made().entrySet()) {
                Files.writeString(SchemaFile.FOLDER.resolve(made.getKey()), made.getValue());
            }
        }
    }

    @Test
    void the_kept_schemas_are_those_the_build_makes_of_the_openapi_document() throws IOException {
        Map<String, String> kept = new TreeMap<>();
        for (String name : SchemaFile.names()) {
            kept.put(name, Files.readString(SchemaFile.FOLDER.resolve(name)));
        }
        assertThat(kept.keySet()).isEqualTo(made().keySet()).isNotEmpty();
        assertThat(made().keySet().stream().filter(name -> !made().get(name).equals(kept.get(name))))
            .as("to be written anew with -Dsurfeit.schemas.write=true").isEmpty();
    }

    @ParameterizedTest
    @MethodSource("names")
    void every_schema_is_one_by_the_schema_of_schemas_and_needs_no_other_file(String name) {
        SchemaFile file = SchemaFile.read(name);
        assertThat(file.ownFaults()).isEmpty();
        assertThat(file.content().path("$schema").asText()).isEqualTo("https://json-schema.org/draft/2020-12/schema");
        assertThat(file.content().path("$id").asText()).isEqualTo("/shared/schemas/" + name);
        assertThat(file.content().path("title").asText()).isNotBlank();
        assertThat(file.content().path("description").asText()).isNotBlank();
        assertThat(file.content().findValuesAsText("$ref")).allMatch(reference -> reference.startsWith("#/$defs/"));
    }

    @Test
    void words_of_another_language_and_references_to_nothing_are_no_schema() {
        assertThatThrownBy(() -> SchemaFile.of("wrong", "{\"nullable\": true}")).isInstanceOf(InvalidSchemaException.class);
        assertThatThrownBy(() -> SchemaFile.of("wrong", "{\"properties\": {\"a\": {\"$ref\": \"#/$defs/A\"}}}"))
            .isInstanceOf(JsonSchemaException.class);
        assertThat(SchemaFile.of("wrong", "{\"required\": \"label\"}").ownFaults()).isNotEmpty();
    }

    @Test
    void every_example_of_the_openapi_document_fits_the_schema_of_its_thing() {
        Map<String, Integer> seen = new HashMap<>();
        media(ROOT).forEach(media -> examples(media).forEach(example -> {
            if (media.has("x-line")) {
                example.asText().lines().forEach(line -> fit(media.get("x-line"), OpenApi.parse(line), seen));
            } else {
                fit(media.path("schema"), example, seen);
            }
        }));
        assertThat(seen.keySet()).containsExactlyInAnyOrderElementsOf(SchemaFile.names());
    }

    @Test
    void every_sample_file_fits_the_schema_of_its_thing() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("sample-spectra-results"))) {
            List<Path> documents = files.filter(file -> file.toString().endsWith(".json")).toList();
            assertThat(documents).hasSizeGreaterThan(3);
            for (Path document : documents) {
                SchemaFile schema = SchemaFile.read(document.toString().endsWith(".sample.json") ? "sample.json"
                    : "interpretation-request.json");
                assertThat(schema.faults(OpenApi.parse(Files.readString(document)))).as(document.toString()).isEmpty();
            }
        }
    }

    /** Holds a value, or each item of a page of values, to the file of its shape, where that has one. */
    private static void fit(JsonNode reference, JsonNode value, Map<String, Integer> seen) {
        if (!reference.has("$ref")) {
            return;
        }
        JsonNode shape = OpenApi.DOCUMENT.followed(reference);
        Optional<String> file = file(shape);
        if (file.isPresent()) {
            assertThat(SchemaFile.read(file.get()).faults(value)).as("%s: %s", file.get(), value).isEmpty();
            seen.merge(file.get(), 1, Integer::sum);
        }
        JsonNode item = shape.at("/properties/items/items");
        value.path("items").forEach(each -> fit(item, each, seen));
        if (shape.has("properties")) {
            value.properties().forEach(each -> fit(shape.path("properties").path(each.getKey()), each.getValue(), seen));
        }
    }

    private static Optional<String> file(JsonNode shape) {
        return Optional.of(shape.path("externalDocs").path("url").asText()).filter(url -> !url.isEmpty())
            .map(url -> Path.of(url).getFileName().toString());
    }

    /** Every description of a body, wherever it stands in the document. */
    private static Stream<JsonNode> media(JsonNode node) {
        return Stream.concat(node.path("content").valueStream().filter(JsonNode::isObject),
            node.valueStream().filter(JsonNode::isContainerNode).flatMap(SchemaFilesTest::media));
    }

    private static Stream<JsonNode> examples(JsonNode media) {
        return Stream.concat(Stream.of(media.path("example")).filter(example -> !example.isMissingNode()),
            media.path("examples").valueStream().map(example -> OpenApi.DOCUMENT.followed(example).path("value")));
    }

    private static Map<String, String> made() {
        Map<String, String> made = new TreeMap<>();
        PackedFiles.load().shared().keySet().stream().filter(path -> path.startsWith("schemas/")).forEach(path ->
            made.put(path.substring("schemas/".length()),
                new String(PackedFiles.bytes("/shared/" + path), StandardCharsets.UTF_8)));
        return made;
    }
}
