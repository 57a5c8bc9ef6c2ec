package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import surfeit.lab.Page;
import surfeit.lab.SampleRevision;
import surfeit.lab.StoredSample;

/** Writes samples on record: one, a page of them, and their revisions. */
public final class SampleDocuments {
    private SampleDocuments() {
    }

    /** The sample in the form it is put in, with its name, revision and links. */
    public static void write(JsonGenerator json, StoredSample stored) throws IOException {
        json.writeStartObject();
        writeHead(json, stored);
        SampleWriter.writeFields(json, stored.sample());
        writeLinks(json, stored.name());
        json.writeEndObject();
    }

    public static void write(JsonGenerator json, Page<StoredSample> page, Optional<String> cursor) throws IOException {
        json.writeStartObject();
        json.writeArrayFieldStart("items");
        for (StoredSample stored : page.items()) {
            json.writeStartObject();
            writeHead(json, stored);
            json.writeNumberField("spot_count", stored.spotCount());
            Written.text(json, "alloy", stored.sample().alloy());
            json.writeStringField("description", stored.sample().description());
            writeLinks(json, stored.name());
            json.writeEndObject();
        }
        json.writeEndArray();
        Written.text(json, "next", cursor);
        json.writeEndObject();
    }

    private static void writeHead(JsonGenerator json, StoredSample stored) throws IOException {
        json.writeStringField("sample", stored.name());
        json.writeNumberField("revision", stored.revision());
        json.writeStringField("changed_time", stored.changed().toString());
    }

    private static void writeLinks(JsonGenerator json, String name) throws IOException {
        String self = "/v1/samples/" + name;
        json.writeObjectFieldStart("links");
        json.writeStringField("self", self);
        json.writeStringField("revisions", self + "/revisions");
        json.writeStringField("spots", self + "/spots");
        json.writeStringField("segregation", self + "/segregation");
        json.writeStringField("interpretations", self + "/interpretations");
        json.writeEndObject();
    }

    /** Every change of a sample, oldest first. */
    public static void writeRevisions(JsonGenerator json, String name, List<SampleRevision> revisions,
                                      Optional<String> cursor) throws IOException {
        json.writeStartObject();
        json.writeArrayFieldStart("items");
        for (SampleRevision revision : revisions) {
            json.writeStartObject();
            json.writeNumberField("revision", revision.number());
            json.writeStringField("change", revision.what().words());
            json.writeStringField("changed_time", revision.occasion().when().toString());
            json.writeStringField("changed_by", revision.occasion().who());
            json.writeNumberField("spot_count", revision.spotCount());
            Written.text(json, "cause", revision.link());
            json.writeObjectFieldStart("links");
            json.writeStringField("self", "/v1/samples/" + name + "/revisions/" + revision.number());
            json.writeEndObject();
            json.writeEndObject();
        }
        json.writeEndArray();
        Written.text(json, "next", cursor);
        json.writeEndObject();
    }
}
