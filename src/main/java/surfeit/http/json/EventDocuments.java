package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import surfeit.lab.LabEvent;

/** Writes events: pointers to what was recorded, not the thing itself. */
public final class EventDocuments {
    /** Where everything can be read again that events may have told of. */
    private static final Map<String, String> EVERYTHING = Map.of("samples", "/v1/samples", "results", "/v1/results",
        "alloys", "/v1/alloys");

    private EventDocuments() {
    }

    public static void write(JsonGenerator json, LabEvent event) throws IOException {
        json.writeStartObject();
        writeHead(json, event.id(), event.type().word(), event.time());
        if (event.sample().isPresent()) {
            json.writeStringField("sample", event.sample().get());
        }
        if (event.subject().isPresent()) {
            json.writeStringField(subject(event.type()), event.subject().get());
        }
        if (event.acceptedCount().isPresent()) {
            json.writeNumberField("accepted_count", event.acceptedCount().getAsLong());
        }
        json.writeEndObject();
    }

    /** The key a subject stands under: what the type speaks of, but for spots that came by an import. */
    private static String subject(LabEvent.Type type) {
        return type == LabEvent.Type.SPOTS_IMPORTED ? "import" : type.word().substring(0, type.word().indexOf('.'));
    }

    /** @param id the event to go on after */
    public static void writeReset(JsonGenerator json, String type, long id, Instant time, String detail)
        throws IOException {
        json.writeStartObject();
        writeHead(json, id, type, time);
        json.writeStringField("detail", detail);
        FaultDocuments.writeLinks(json, EVERYTHING);
        json.writeEndObject();
    }

    /** @param id the event to go on after */
    public static void writeShutdown(JsonGenerator json, String type, long id, Instant time) throws IOException {
        json.writeStartObject();
        writeHead(json, id, type, time);
        json.writeEndObject();
    }

    private static void writeHead(JsonGenerator json, long id, String type, Instant time) throws IOException {
        json.writeNumberField("id", id);
        json.writeStringField("type", type);
        json.writeStringField("time", time.toString());
    }
}
