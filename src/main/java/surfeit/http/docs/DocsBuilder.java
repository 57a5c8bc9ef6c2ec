package surfeit.http.docs;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Runs when the program is built: turns {@code openapi.yaml} into {@code openapi.json}, into the documents page and into
 * the JSON Schemas of the shared folder, and lists the shared files with their checksums.
 */
public final class DocsBuilder {
    /** The same text on every machine: two blanks a level, LF. */
    private static final ObjectWriter PRETTY = new ObjectMapper().writer(new DefaultPrettyPrinter(
        Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER))
        .withObjectIndenter(new DefaultIndenter("  ", "\n")));

    private DocsBuilder() {
    }

    /** @param arguments the folder of the compiled classes */
    public static void main(String[] arguments) throws IOException {
        build(Path.of(arguments[0]));
    }

    /** Makes the documents in a folder that holds {@code openapi/openapi.yaml} and {@code shared}. */
    static void build(Path classes) throws IOException {
        JsonNode openApi = new YAMLMapper().readTree(Files.readAllBytes(classes.resolve("openapi/openapi.yaml")));
        Files.write(classes.resolve("openapi/openapi.json"), new ObjectMapper().writeValueAsBytes(openApi));
        Path docs = Files.createDirectories(classes.resolve("docs"));
        Files.writeString(docs.resolve("index.html"), new OpenApiPage(new OpenApiDocument(openApi)).html());
        schemas(openApi, classes.resolve("shared/schemas"));
        Files.writeString(docs.resolve("shared-files.txt"), String.join("\n", list(classes.resolve("shared"))) + "\n");
    }

    private static void schemas(JsonNode openApi, Path folder) throws IOException {
        Files.createDirectories(folder);
        try (Stream<Path> earlier = Files.list(folder)) {
            for (Path file : earlier.toList()) {
                Files.delete(file);
            }
        }
        for (Map.Entry<String, ObjectNode> schema : new SharedSchemas(openApi).byFile().entrySet()) {
            Files.writeString(folder.resolve(schema.getKey()), PRETTY.writeValueAsString(schema.getValue()) + "\n");
        }
    }

    private static List<String> list(Path shared) throws IOException {
        try (Stream<Path> files = Files.walk(shared)) {
            return files.filter(Files::isRegularFile).sorted()
                .map(file -> sha256(file) + " " + shared.relativize(file).toString().replace('\\', '/')).toList();
        }
    }

    private static String sha256(Path file) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
        } catch (IOException | NoSuchAlgorithmException e) {
            throw new IllegalStateException("Cannot take the checksum of " + file + ".", e);
        }
    }
}
