package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import surfeit.lab.Dialect;
import surfeit.lab.ImportReport;
import surfeit.lab.LeftOut;

/** Writes what became of an upload. */
public final class ImportDocument {
    private ImportDocument() {
    }

    /** @param rehearsal true where everything was taken back because only a check was asked for */
    public static void write(JsonGenerator json, ImportReport report, boolean rehearsal) throws IOException {
        json.writeStartObject();
        Written.text(json, "id", report.id());
        json.writeStringField("sample", report.sample());
        json.writeNumberField("sample_revision", report.sampleRevision());
        json.writeBooleanField("validated_only", rehearsal);
        json.writeStringField("imported_time", report.occasion().when().toString());
        json.writeStringField("imported_by", report.occasion().who());
        json.writeNumberField("accepted_count", report.acceptedCount());
        json.writeNumberField("unchanged_count", report.unchangedCount());
        json.writeNumberField("rejected_count", report.rejectedCount());
        json.writeNumberField("fault_count", report.faultCount());
        json.writeArrayFieldStart("left_out");
        for (LeftOut leftOut : report.leftOut()) {
            json.writeStartObject();
            FaultDocuments.writePlace(json, leftOut.place());
            json.writeStringField("reason", leftOut.reason());
            if (leftOut.label().isPresent()) {
                json.writeStringField("label", leftOut.label().get());
            }
            json.writeEndObject();
        }
        json.writeEndArray();
        writeDialect(json, report);
        FaultDocuments.write(json, "faults", report.faults());
        writeFile(json, report.file());
        FaultDocuments.writeLinks(json, links(report));
        json.writeEndObject();
    }

    private static void writeDialect(JsonGenerator json, ImportReport report) throws IOException {
        json.writeFieldName("dialect");
        if (report.dialect().isEmpty()) {
            json.writeNull();
            return;
        }
        Dialect dialect = report.dialect().get();
        json.writeStartObject();
        json.writeStringField("charset", dialect.charset());
        Written.text(json, "delimiter", dialect.delimiter());
        Written.text(json, "decimal", dialect.decimal());
        Written.text(json, "time_zone", dialect.timeZone());
        Written.text(json, "unit", dialect.unit());
        Written.text(json, "layout", dialect.layout());
        json.writeStringField("decided_by", dialect.decidedBy());
        json.writeEndObject();
    }

    private static void writeFile(JsonGenerator json, ImportReport.SentFile file) throws IOException {
        json.writeObjectFieldStart("file");
        json.writeStringField("media_type", file.mediaType());
        Written.text(json, "name", file.fileName());
        json.writeFieldName("byte_count");
        if (file.byteCount().isPresent()) {
            json.writeNumber(file.byteCount().getAsLong());
        } else {
            json.writeNull();
        }
        Written.text(json, "sha256", file.sha256());
        json.writeEndObject();
    }

    private static Map<String, String> links(ImportReport report) {
        Map<String, String> links = new LinkedHashMap<>();
        links.put("sample", "/v1/samples/" + report.sample());
        links.put("spots", "/v1/samples/" + report.sample() + "/spots");
        links.put("segregation", "/v1/samples/" + report.sample() + "/segregation");
        report.id().ifPresent(id -> {
            links.put("self", "/v1/imports/" + id);
            links.put("original", "/v1/imports/" + id + "/original");
            if (report.rejectedCount() > 0) {
                links.put("rejected", "/v1/imports/" + id + "/rejected.csv");
            }
        });
        return links;
    }
}
