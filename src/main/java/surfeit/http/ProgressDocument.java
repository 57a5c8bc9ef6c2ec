package surfeit.http;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import surfeit.http.json.FaultDocuments;

/** Writes how far an upload has come. */
final class ProgressDocument {
    private ProgressDocument() {
    }

    static void write(JsonGenerator json, String name, OngoingUpload upload,
        OngoingUpload.Stand stand) throws IOException {
        json.writeStartObject();
        json.writeStringField("import", name);
        json.writeStringField("sample", upload.sample());
        json.writeStringField("state", stand.state().word());
        json.writeNumberField("spot_count", stand.spotCount());
        json.writeStringField("started_time", upload.started().toString());
        Map<String, String> links = new LinkedHashMap<>(Map.of("self", "/v1/imports/" + name,
            "sample", "/v1/samples/" + upload.sample()));
        stand.id().ifPresent(id -> links.put("report", "/v1/imports/" + id));
        FaultDocuments.writeLinks(json, links);
        json.writeEndObject();
    }
}
