package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import surfeit.lab.InputChange;
import surfeit.lab.StoredInterpretation;

/**
 * Writes frozen answers: what they were made from and with, whether an input changed since, and the answer itself as
 * the bytes it was frozen in.
 */
public final class StoredInterpretationDocuments {
    private StoredInterpretationDocuments() {
    }

    /** @param answer the frozen answer, a JSON document */
    public static void write(JsonGenerator json, StoredInterpretation stored, String answer) throws IOException {
        json.writeStartObject();
        writeFields(json, stored);
        json.writeFieldName("answer");
        json.writeRawValue(answer);
        json.writeEndObject();
    }

    /** A page of them, without the answers. */
    public static void write(JsonGenerator json, List<StoredInterpretation> page, Optional<String> next)
            throws IOException {
        json.writeStartObject();
        json.writeArrayFieldStart("items");
        for (StoredInterpretation stored : page) {
            json.writeStartObject();
            writeFields(json, stored);
            json.writeEndObject();
        }
        json.writeEndArray();
        Written.text(json, "next", next);
        json.writeEndObject();
    }

    private static void writeFields(JsonGenerator json, StoredInterpretation stored) throws IOException {
        json.writeStringField("id", stored.id());
        json.writeStringField("sample", stored.sample());
        json.writeStringField("by", stored.by().word());
        json.writeStringField("stored_time", stored.stored().when().toString());
        json.writeStringField("stored_by", stored.stored().who());
        json.writeObjectFieldStart("inputs");
        json.writeNumberField("sample_revision", stored.inputs().sample());
        Written.text(json, "alloy", stored.alloy());
        writeNumber(json, "alloy_revision", stored.inputs().alloy());
        json.writeEndObject();
        json.writeObjectFieldStart("method");
        json.writeStringField("name", stored.madeWith().method());
        json.writeNumberField("version", stored.madeWith().methodVersion());
        json.writeEndObject();
        json.writeStringField("program_version", stored.madeWith().programVersion());
        writeTexts(json, "reference_tables_sha256", stored.madeWith().tables());
        writeTexts(json, "answer_sha256", stored.checksums());
        json.writeBooleanField("stale", stored.stale().isPresent());
        writeChange(json, stored.stale());
        String self = address(stored);
        FaultDocuments.writeLinks(json, Map.of("self", self, "csv", self + ".csv", "md", self + ".md",
            "sample_revision", "/v1/samples/" + stored.sample() + "/revisions/" + stored.inputs().sample(),
            "spots", "/v1/samples/" + stored.sample() + "/spots?revision=" + stored.inputs().sample(),
            "segregation", presentAnswer(stored)));
    }

    private static void writeChange(JsonGenerator json, Optional<InputChange> found) throws IOException {
        json.writeFieldName("changed_input");
        if (found.isEmpty()) {
            json.writeNull();
            return;
        }
        InputChange change = found.get();
        json.writeStartObject();
        json.writeStringField("change", change.what());
        json.writeStringField("changed_time", change.occasion().when().toString());
        json.writeStringField("changed_by", change.occasion().who());
        writeNumber(json, "sample_revision", change.revisionOf(InputChange.Input.SAMPLE));
        writeNumber(json, "alloy_revision", change.revisionOf(InputChange.Input.ALLOY));
        Written.text(json, "cause", change.cause());
        json.writeEndObject();
    }

    private static void writeNumber(JsonGenerator json, String name, OptionalLong number) throws IOException {
        json.writeFieldName(name);
        if (number.isPresent()) {
            json.writeNumber(number.getAsLong());
        } else {
            json.writeNull();
        }
    }

    private static void writeTexts(JsonGenerator json, String name, Map<String, String> texts) throws IOException {
        json.writeObjectFieldStart(name);
        for (Map.Entry<String, String> text : texts.entrySet()) {
            json.writeStringField(text.getKey(), text.getValue());
        }
        json.writeEndObject();
    }

    /** Where it can be read again. */
    public static String address(StoredInterpretation stored) {
        return "/v1/interpretations/" + stored.id();
    }

    /** Where the answer of today stands. */
    public static String presentAnswer(StoredInterpretation stored) {
        return "/v1/samples/" + stored.sample() + "/segregation?by=" + stored.by().word();
    }
}
