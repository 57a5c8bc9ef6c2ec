package surfeit.element;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collections;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A packaged table of reference data or vocabulary: its rows by column name, and the SHA-256 of its bytes.
 *
 * <p>Read from {@code /shared/reference/<name>} or {@code /shared/vocabulary/<name>} in the program's own jar. A row
 * without a source refuses the whole table: no constant enters an answer without one. Immutable, thread-safe.
 */
public record ReferenceTable(String fileName, String sha256, List<Map<String, String>> rows) {
    public ReferenceTable {
        rows = rows.stream().map(row -> Collections.unmodifiableMap(new LinkedHashMap<>(row))).toList();
        for (int i = 0; i < rows.size(); i++) {
            if (rows.get(i).getOrDefault("source", "").isBlank()) {
                throw new IllegalStateException("Row " + (i + 1) + " of " + fileName + " names no source.");
            }
        }
    }

    /** Reads a packaged table, for example {@code elements.csv}. */
    public static ReferenceTable packaged(String fileName) {
        return read("/shared/reference/", fileName);
    }

    /** Reads a packaged list of words, for example {@code materials.csv}. */
    public static ReferenceTable vocabulary(String fileName) {
        return read("/shared/vocabulary/", fileName);
    }

    private static ReferenceTable read(String folder, String fileName) {
        byte[] bytes = bytesOf(folder + fileName);
        try (var records = CsvReader.builder().ofNamedCsvRecord(new String(bytes, StandardCharsets.UTF_8))) {
            List<Map<String, String>> rows = records.stream().map(NamedCsvRecord::getFieldsAsMap).toList();
            return new ReferenceTable(fileName, sha256(bytes), rows);
        } catch (IOException e) {
            throw new UncheckedIOException("Cannot read " + fileName + " from the program's jar.", e);
        }
    }

    private static byte[] bytesOf(String path) {
        try (InputStream in = Optional.ofNullable(ReferenceTable.class.getResourceAsStream(path))
            .orElseThrow(() -> new IllegalStateException("The program's jar lacks " + path + "."))) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException("Cannot read " + path + " from the program's jar.", e);
        }
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("This Java lacks SHA-256.", e);
        }
    }
}
