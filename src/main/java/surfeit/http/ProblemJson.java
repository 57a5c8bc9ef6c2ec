package surfeit.http;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import surfeit.http.json.JsonFormat;
import surfeit.lab.Fault;
import surfeit.lab.Place;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** A refusal as {@code application/problem+json} (RFC 9457). */
final class ProblemJson {
    static final String MEDIA_TYPE = "application/problem+json";

    private ProblemJson() {
    }

    static byte[] of(Problem problem, String detail, String requestId) {
        return of(new ProblemException(problem, detail), requestId);
    }

    static byte[] of(ProblemException refusal, String requestId) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(512);
        try (JsonGenerator json = JsonFormat.generator(bytes)) {
            Problem problem = refusal.problem();
            json.writeStartObject();
            json.writeStringField("type", address(problem));
            json.writeStringField("title", problem.title());
            json.writeNumberField("status", problem.status());
            json.writeStringField("code", problem.code());
            json.writeStringField("detail", refusal.detail());
            json.writeStringField("request_id", requestId);
            if (refusal.setting().isPresent()) {
                json.writeStringField("setting", refusal.setting().get());
            }
            if (refusal.faultCount() > 0) {
                json.writeNumberField("fault_count", refusal.faultCount());
                json.writeArrayFieldStart("errors");
                for (Fault fault : refusal.faults()) {
                    write(json, fault);
                }
                json.writeEndArray();
            }
            writeLinks(json, refusal.links());
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException("Writing to memory failed.", e);
        }
        return bytes.toByteArray();
    }

    static String address(Problem problem) {
        return "/v1/problems/" + problem.code();
    }

    /** Writes one fault; also used by import reports. */
    static void write(JsonGenerator json, Fault fault) throws IOException {
        json.writeStartObject();
        writePlace(json, fault.place());
        if (fault.value().isPresent()) {
            json.writeStringField("value", fault.value().get());
        }
        json.writeStringField("code", fault.code().code());
        json.writeStringField("detail", fault.detail());
        if (fault.spot().isPresent()) {
            json.writeStringField("spot", fault.spot().get());
            writeLinks(json, Map.of("corrections", "/v1/spots/" + fault.spot().get() + "/corrections"));
        }
        json.writeEndObject();
    }

    static void writePlace(JsonGenerator json, Place place) throws IOException {
        if (place.pointer().isPresent()) {
            json.writeStringField("pointer", place.pointer().get());
        }
        if (place.line().isPresent()) {
            json.writeNumberField("line", place.line().getAsLong());
        }
        if (place.column().isPresent()) {
            json.writeNumberField("column", place.column().getAsInt());
        }
        if (place.columnName().isPresent()) {
            json.writeStringField("column_name", place.columnName().get());
        }
    }

    private static void writeLinks(JsonGenerator json, Map<String, String> links) throws IOException {
        if (!links.isEmpty()) {
            json.writeObjectFieldStart("links");
            for (Map.Entry<String, String> link : new java.util.TreeMap<>(links).entrySet()) {
                json.writeStringField(link.getKey(), link.getValue());
            }
            json.writeEndObject();
        }
    }
}
