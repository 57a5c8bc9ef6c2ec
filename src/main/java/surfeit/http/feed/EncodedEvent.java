package surfeit.http.feed;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.Optional;
import surfeit.http.json.EventDocuments;
import surfeit.http.json.JsonFormat;
import surfeit.lab.EventFilter;
import surfeit.lab.LabEvent;

/** An event as JSON, written once for all who listen. Its bytes are not changed. */
public record EncodedEvent(long id, String type, Optional<LabEvent> event, byte[] json) {
    /** Says that events may be missing; everything is to be read again. */
    static final String RESET = "stream.reset";
    /** Says that the service stops. */
    static final String SHUTDOWN = "stream.shutdown";

    private interface Document {
        void write(JsonGenerator json) throws IOException;
    }

    static EncodedEvent of(LabEvent event) {
        return new EncodedEvent(event.id(), event.type().word(), Optional.of(event),
            bytes(json -> EventDocuments.write(json, event)));
    }

    /** @param id the event after which the stream goes on */
    static EncodedEvent reset(long id, Instant time, String detail) {
        return new EncodedEvent(id, RESET, Optional.empty(),
            bytes(json -> EventDocuments.writeReset(json, RESET, id, time, detail)));
    }

    /** @param id the event to go on after */
    static EncodedEvent shutdown(long id, Instant time) {
        return new EncodedEvent(id, SHUTDOWN, Optional.empty(),
            bytes(json -> EventDocuments.writeShutdown(json, SHUTDOWN, id, time)));
    }

    /** What concerns the stream itself is for everybody. */
    boolean matches(EventFilter filter) {
        return event.map(filter::matches).orElse(true);
    }

    private static byte[] bytes(Document document) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator json = JsonFormat.generator(bytes)) {
            document.write(json);
        } catch (IOException e) {
            throw new UncheckedIOException("Writing to memory failed.", e);
        }
        return bytes.toByteArray();
    }
}
