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
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The one way this service reads and writes JSON: UTF-8, bounded, numbers with the fewest digits that keep them.
 * Thread-safe.
 */
public final class JsonFormat {
    /** Deepest nesting unless {@code json-depth-max} says otherwise; an upload of spots has five levels. */
    static final int DEPTH_MAX = 20;
    /** Longest number text; a double needs 17 digits, and a workstation prints no more than that. */
    private static final int NUMBER_LENGTH_MAX = 100;
    /** Longest text of one value, in characters: a long description still fits. */
    private static final int TEXT_LENGTH_MAX = 100_000;
    /** Longest key, in characters. */
    private static final int KEY_LENGTH_MAX = 1_000;
    static final String LIMITS_IN_WORDS = "Expected numbers of at most " + NUMBER_LENGTH_MAX
        + " characters, texts of at most "
        + TEXT_LENGTH_MAX + " and keys of at most " + KEY_LENGTH_MAX + "; found a longer one.";

    private static final JsonFactory FACTORY = factory(DEPTH_MAX);
    private static final Map<Integer, JsonFactory> BY_DEPTH = new ConcurrentHashMap<>(Map.of(DEPTH_MAX, FACTORY));

    private JsonFormat() {
    }

    private static JsonFactory factory(int depthMax) {
        return new JsonFactoryBuilder()
            .disable(JsonFactory.Feature.CHARSET_DETECTION)
            .disable(JsonFactory.Feature.INTERN_FIELD_NAMES)
            .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
            .enable(StreamReadFeature.USE_FAST_DOUBLE_PARSER)
            .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
            .streamReadConstraints(StreamReadConstraints.builder()
                .maxNestingDepth(depthMax).maxNumberLength(NUMBER_LENGTH_MAX)
                .maxStringLength(TEXT_LENGTH_MAX).maxNameLength(KEY_LENGTH_MAX).build())
            .build();
    }

    private static JsonFactory ofDepth(int depthMax) {
        return BY_DEPTH.computeIfAbsent(depthMax, JsonFormat::factory);
    }

    /** A reader of a body, as deep as it may nest, from behind its byte order mark on. */
    static JsonParser parser(InputStream in) throws IOException {
        return ofDepth(DepthLimited.depthMax(in)).createParser(ByteOrderMark.passed(in));
    }

    static JsonParser parser(byte[] bytes, int offset, int length, int depthMax) throws IOException {
        return ofDepth(depthMax).createParser(bytes, offset, length);
    }

    /** A writer of compact JSON; closing it leaves the stream open. */
    public static JsonGenerator generator(OutputStream out) throws IOException {
        return new KnownNames(FACTORY.createGenerator(out).disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET));
    }

    /** A writer of documents, one a line; whoever writes ends each line. */
    public static JsonGenerator lines(OutputStream out) throws IOException {
        return generator(out).setRootValueSeparator(null);
    }
}
