package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import surfeit.lab.AuditEntry;
import surfeit.lab.AuditHead;

/** Writes rows of the audit, and its end. */
public final class AuditDocuments {
    private AuditDocuments() {
    }

    /** @param head the end of the whole audit; kept elsewhere, it shows a cut tail */
    public static void write(JsonGenerator json, List<AuditEntry> entries, AuditHead head, Optional<String> next)
            throws IOException {
        json.writeStartObject();
        json.writeArrayFieldStart("items");
        for (AuditEntry entry : entries) {
            json.writeStartObject();
            json.writeNumberField("row", entry.number());
            json.writeStringField("time", entry.when().toString());
            json.writeStringField("who", entry.who());
            json.writeStringField("what", entry.what());
            Written.text(json, "sample", entry.sample());
            json.writeStringField("detail", entry.detail());
            json.writeStringField("sha256", entry.hash());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeObjectFieldStart("head");
        json.writeNumberField("row_count", head.count());
        json.writeStringField("sha256", head.hash());
        json.writeEndObject();
        Written.text(json, "next", next);
        json.writeEndObject();
    }
}
