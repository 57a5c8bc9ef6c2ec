package surfeit.http.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;

/** Reads a body that is one JSON document, or refuses it with everything that is wrong with it. */
final class JsonDocument {
    private JsonDocument() {
    }

    /** Reads one shape; empty where it noted a fault. */
    interface Shape<T> {
        Optional<T> read(JsonInput in) throws IOException;
    }

    /**
     * The document's content.
     *
     * @throws MalformedJsonException                where it is not JSON
     * @throws surfeit.lab.ProblemException with every fault, where it has any
     */
    static <T> T read(InputStream bytes, Shape<T> shape) throws IOException {
        JsonFaults faults = new JsonFaults();
        try (JsonParser parser = JsonFormat.parser(bytes)) {
            JsonInput in = new JsonInput(parser, faults);
            in.start();
            Optional<T> content = shape.read(in);
            in.end();
            faults.refuse();
            return content.orElseThrow(() -> new IllegalStateException("Neither content nor a fault was read."));
        } catch (JsonProcessingException e) {
            throw JsonInput.refused(e);
        }
    }
}
