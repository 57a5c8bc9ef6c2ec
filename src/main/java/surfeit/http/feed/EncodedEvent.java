package surfeit.http.feed;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import surfeit.http.json.EventDocuments;
import surfeit.http.json.JsonFormat;
import surfeit.lab.EventFilter;
import surfeit.lab.LabEvent;

/** An event as bytes, made once for all who listen and not changed after that. Thread-safe. */
final class EncodedEvent {
    /** Says that events may be missing; everything is to be read again. */
    static final String RESET = "stream.reset";
    /** Says that the service stops. */
    static final String SHUTDOWN = "stream.shutdown";

    private final long id;
    private final Optional<LabEvent> event;
    private final byte[] line;
    private final byte[] block;
    private final Map<Framing, ByteBuffer> sent = new ConcurrentHashMap<>(2);

    private EncodedEvent(long id, String type, Optional<LabEvent> event, Document document) {
        this.id = id;
        this.event = event;
        this.line = line(document);
        String json = new String(line, StandardCharsets.UTF_8);
        this.block = ("id: " + id + "\nevent: " + type + "\ndata: " + json + "\n").getBytes(StandardCharsets.UTF_8);
    }

    private interface Document {
        void write(JsonGenerator json) throws IOException;
    }

    private static byte[] line(Document document) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator json = JsonFormat.generator(bytes)) {
            document.write(json);
        } catch (IOException e) {
            throw new UncheckedIOException("Writing to memory failed.", e);
        }
        bytes.write('\n');
        return bytes.toByteArray();
    }

    static EncodedEvent of(LabEvent event) {
        return new EncodedEvent(event.id(), event.type().word(), Optional.of(event),
            json -> EventDocuments.write(json, event));
    }

    /** @param id the event after which the stream goes on */
    static EncodedEvent reset(long id, Instant time, String detail) {
        return new EncodedEvent(id, RESET, Optional.empty(),
            json -> EventDocuments.writeReset(json, RESET, id, time, detail));
    }

    /** @param id the event to go on after */
    static EncodedEvent shutdown(long id, Instant time) {
        return new EncodedEvent(id, SHUTDOWN, Optional.empty(),
            json -> EventDocuments.writeShutdown(json, SHUTDOWN, id, time));
    }

    long id() {
        return id;
    }

    /** The event as JSON, with the end of a line. */
    byte[] line() {
        return line;
    }

    /** The event as a block of an event stream. */
    byte[] block() {
        return block;
    }

    /** The event as a stream is sent it, outside the heap: from there it goes out without a copy for each client. */
    ByteBuffer sent(Framing framing) {
        return sent.computeIfAbsent(framing, unknown -> {
            byte[] bytes = framing.event(this);
            return ByteBuffer.allocateDirect(bytes.length).put(bytes).flip();
        }).duplicate();
    }

    /** What concerns the stream itself is for everybody. */
    boolean matches(EventFilter filter) {
        return event.map(filter::matches).orElse(true);
    }
}
