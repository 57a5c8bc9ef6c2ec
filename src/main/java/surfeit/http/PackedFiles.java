package surfeit.http;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Files packed in the program's own jar: the documents, and the reference data others may use. Immutable, thread-safe.
 *
 * <p>Only files that the build listed are served; a path is looked up in that list and never in a folder.
 */
final class PackedFiles {
    /** Written by the build: one line per file under {@code shared}, its SHA-256 and its path. */
    static final String LIST = "/docs/shared-files.txt";

    private final Map<String, String> sharedSha256;

    private PackedFiles(Map<String, String> sharedSha256) {
        this.sharedSha256 = Collections.unmodifiableMap(sharedSha256);
    }

    static PackedFiles load() {
        Map<String, String> files = new TreeMap<>();
        new String(bytes(LIST), StandardCharsets.UTF_8).lines().forEach(line -> {
            int blank = line.indexOf(' ');
            files.put(line.substring(blank + 1), line.substring(0, blank));
        });
        return new PackedFiles(files);
    }

    /** Paths below {@code shared} with the SHA-256 of each file. */
    Map<String, String> shared() {
        return sharedSha256;
    }

    /** The bytes of a file below {@code shared}; empty where there is none. */
    Optional<byte[]> shared(String path) {
        return sharedSha256.containsKey(path) ? Optional.of(bytes("/shared/" + path)) : Optional.empty();
    }

    static byte[] bytes(String resource) {
        try (InputStream in = PackedFiles.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("The program's jar lacks " + resource + "; it was not built whole.");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException("Cannot read " + resource + " from the program's jar.", e);
        }
    }

    static String contentType(String path) {
        return switch (path.substring(path.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT)) {
            case "csv" -> Form.CSV.contentType();
            case "json" -> Form.JSON.contentType();
            case "md" -> Form.MARKDOWN.contentType();
            default -> Form.PLAIN.contentType();
        };
    }
}
