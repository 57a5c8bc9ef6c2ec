package surfeit.http.feed;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Events for a client that asks again and again.
 *
 * @param events each as JSON
 * @param next   what to ask after the next time
 */
public record EventBatch(List<byte[]> events, long next) {
    /** Types of events that concern the stream and are on no record; they come whatever types are wanted. */
    public static final List<String> STREAM_TYPES = List.of(EncodedEvent.RESET, EncodedEvent.SHUTDOWN);

    public void write(JsonGenerator json) throws IOException {
        json.writeStartObject();
        json.writeArrayFieldStart("items");
        for (byte[] event : events) {
            json.writeRawValue(new String(event, StandardCharsets.UTF_8).stripTrailing());
        }
        json.writeEndArray();
        json.writeNumberField("next", next);
        json.writeEndObject();
    }
}
