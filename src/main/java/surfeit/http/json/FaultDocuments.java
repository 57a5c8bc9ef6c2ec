package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import surfeit.lab.Fault;
import surfeit.lab.Place;

/** Writes what is wrong with a body, each fault at its place. */
public final class FaultDocuments {
    private FaultDocuments() {
    }

    /** A list of faults under a name. */
    public static void write(JsonGenerator json, String name, List<Fault> faults) throws IOException {
        json.writeArrayFieldStart(name);
        for (Fault fault : faults) {
            write(json, fault);
        }
        json.writeEndArray();
    }

    private static void write(JsonGenerator json, Fault fault) throws IOException {
        json.writeStartObject();
        writePlace(json, fault.place());
        if (fault.value().isPresent()) {
            json.writeStringField("value", fault.value().get());
        }
        json.writeStringField("code", fault.code().code());
        json.writeStringField("detail", fault.detail());
        if (fault.spot().isPresent()) {
            String spot = "/v1/spots/" + fault.spot().get();
            json.writeStringField("spot", fault.spot().get());
            writeLinks(json, Map.of("spot", spot, "corrections", spot + "/corrections"));
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

    /** Addresses under the names of their relations, in the order of the names. */
    public static void writeLinks(JsonGenerator json, Map<String, String> links) throws IOException {
        json.writeObjectFieldStart("links");
        for (Map.Entry<String, String> link : new TreeMap<>(links).entrySet()) {
            json.writeStringField(link.getKey(), link.getValue());
        }
        json.writeEndObject();
    }
}
