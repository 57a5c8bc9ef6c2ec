package surfeit.http.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.StreamWriteFeature;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;

/**
 * The one way this service reads and writes JSON: UTF-8, bounded, numbers with the fewest digits that keep them.
 * Thread-safe.
 */
public final class JsonFormat {
    /** Deepest nesting of a body; a spot needs five levels. The setting {@code json-depth-max}. */
    public static final int DEPTH_MAX = 20;
    /** Longest number text; a double needs 17 digits, and a workstation prints no more than that. */
    private static final int NUMBER_LENGTH_MAX = 100;
    /** Longest text of one value, in characters: a long description still fits. */
    private static final int TEXT_LENGTH_MAX = 100_000;
    /** Longest key, in characters. */
    private static final int KEY_LENGTH_MAX = 1_000;

    private static final JsonFactory FACTORY = new JsonFactoryBuilder()
        .disable(JsonFactory.Feature.CHARSET_DETECTION)
        .disable(JsonFactory.Feature.INTERN_FIELD_NAMES)
        .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
        .enable(StreamReadFeature.USE_FAST_DOUBLE_PARSER)
        .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
        .streamReadConstraints(StreamReadConstraints.builder()
            .maxNestingDepth(DEPTH_MAX).maxNumberLength(NUMBER_LENGTH_MAX)
            .maxStringLength(TEXT_LENGTH_MAX).maxNameLength(KEY_LENGTH_MAX).build())
        .build();

    private JsonFormat() {
    }

    static JsonParser parser(InputStream in) throws IOException {
        return FACTORY.createParser(in);
    }

    static JsonParser parser(byte[] bytes, int offset, int length) throws IOException {
        return FACTORY.createParser(bytes, offset, length);
    }

    /** A writer of compact JSON; closing it leaves the stream open. */
    public static JsonGenerator generator(OutputStream out) throws IOException {
        return FACTORY.createGenerator(out).disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
    }

    /** A writer of documents, one a line; whoever writes ends each line. */
    public static JsonGenerator lines(OutputStream out) throws IOException {
        return generator(out).setRootValueSeparator(null);
    }
}
