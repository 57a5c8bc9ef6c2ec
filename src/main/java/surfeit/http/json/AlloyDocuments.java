package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.composition.Alloy;
import surfeit.composition.Basis;
import surfeit.composition.Phase;
import surfeit.element.Element;
import surfeit.lab.StoredAlloy;

/** Writes alloys of the catalogue, in the form a lab states its own. */
public final class AlloyDocuments {
    private AlloyDocuments() {
    }

    public static void write(JsonGenerator json, StoredAlloy stored) throws IOException {
        Alloy alloy = stored.alloy();
        json.writeStartObject();
        json.writeStringField("alloy", alloy.id());
        json.writeStringField("name", alloy.name());
        json.writeNumberField("revision", stored.revision());
        json.writeStringField("origin", stored.revision() == 0 ? "program" : "lab");
        if (stored.occasion().isPresent()) {
            json.writeStringField("changed_time", stored.occasion().get().when().toString());
            json.writeStringField("changed_by", stored.occasion().get().who());
        }
        json.writeFieldName("nominal");
        NominalJson.write(json, alloy.nominal());
        if (alloy.temperature().isPresent()) {
            json.writeObjectFieldStart("melting");
            json.writeStringField("temperature_c", alloy.temperature().get().celsius());
            json.writeStringField("kind", alloy.temperature().get().kind());
            json.writeEndObject();
        }
        json.writeArrayFieldStart("phases");
        for (Phase phase : alloy.phases()) {
            write(json, phase);
        }
        json.writeEndArray();
        json.writeStringField("source", alloy.source());
        json.writeStringField("source_read", alloy.sourceRead().words());
        json.writeObjectFieldStart("links");
        json.writeStringField("self", "/v1/alloys/" + alloy.id());
        json.writeEndObject();
        json.writeEndObject();
    }

    static void write(JsonGenerator json, Phase phase) throws IOException {
        json.writeStartObject();
        json.writeStringField("name", phase.name());
        json.writeStringField("system", phase.system());
        json.writeObjectFieldStart("composition");
        json.writeStringField("unit", Basis.ATOMIC.unit());
        json.writeObjectFieldStart("elements");
        for (Map.Entry<Element, Double> entry : phase.atomicFractions().entrySet()) {
            json.writeNumberField(entry.getKey().symbol(), Numbers.stated(entry.getValue()));
        }
        json.writeEndObject();
        json.writeEndObject();
        SampleWriter.stated(json, "density_g_per_cm3", phase.densityGPerCm3());
        json.writeStringField("role", phase.role());
        SampleWriter.stated(json, "temperature_c", phase.temperatureCelsius());
        json.writeStringField("source", phase.source());
        json.writeStringField("source_read", phase.sourceRead().words());
        json.writeEndObject();
    }

    /** A page of them. */
    public static void write(JsonGenerator json, List<StoredAlloy> alloys, Optional<String> next) throws IOException {
        json.writeStartObject();
        json.writeArrayFieldStart("items");
        for (StoredAlloy alloy : alloys) {
            write(json, alloy);
        }
        json.writeEndArray();
        Written.text(json, "next", next);
        json.writeEndObject();
    }
}
