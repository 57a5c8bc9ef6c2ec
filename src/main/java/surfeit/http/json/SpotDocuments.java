package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.lab.StoredSpot;
import surfeit.spot.Conditions;
import surfeit.spot.Position;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/** Writes spots on record: what was reported, each value with its state, in the unit it was reported in. */
public final class SpotDocuments {
    private SpotDocuments() {
    }

    /** One spot at one of its revisions. */
    public static void write(JsonGenerator json, StoredSpot stored) throws IOException {
        Spot spot = stored.spot();
        json.writeStartObject();
        json.writeStringField("id", stored.id());
        json.writeStringField("sample", stored.sample());
        json.writeNumberField("revision", stored.revision());
        json.writeStringField("recorded_time", stored.recorded().when().toString());
        json.writeStringField("recorded_by", stored.recorded().who());
        if (stored.reason().isPresent()) {
            json.writeStringField("reason", stored.reason().get());
        }
        json.writeBooleanField("withdrawn", stored.withdrawn());
        json.writeStringField("import", stored.importId());
        json.writeStringField("label", spot.label());
        stated(json, "particle", spot.particle());
        stated(json, "feature", spot.feature());
        stated(json, "session", spot.session());
        stated(json, "acquired_time", spot.acquiredTime().map(DateTimeFormatter.ISO_OFFSET_DATE_TIME::format));
        writeConditions(json, spot.conditions());
        json.writeStringField("role", spot.isReference() ? "reference" : "specimen");
        if (spot.reference().isPresent()) {
            json.writeFieldName("true_composition");
            NominalJson.write(json, spot.reference().get().trueComposition());
            json.writeBooleanField("same_material", spot.reference().get().sameMaterial());
        }
        json.writeStringField("unit", spot.basis().unit());
        json.writeObjectFieldStart("elements");
        for (Map.Entry<Element, ReportedValue> entry : spot.values().entrySet()) {
            json.writeFieldName(entry.getKey().symbol());
            write(json, entry.getValue());
        }
        json.writeEndObject();
        json.writeObjectFieldStart("links");
        json.writeStringField("self", "/v1/spots/" + stored.id());
        json.writeStringField("revisions", "/v1/spots/" + stored.id() + "/revisions");
        json.writeStringField("sample", "/v1/samples/" + stored.sample());
        json.writeStringField("import", "/v1/imports/" + stored.importId());
        json.writeEndObject();
        json.writeEndObject();
    }

    /** A list of spots; {@code next} is the cursor of the next page. */
    public static void write(JsonGenerator json, List<StoredSpot> spots, Optional<String> next) throws IOException {
        json.writeStartObject();
        json.writeArrayFieldStart("items");
        for (StoredSpot spot : spots) {
            write(json, spot);
        }
        json.writeEndArray();
        Written.text(json, "next", next);
        json.writeEndObject();
    }

    private static void writeConditions(JsonGenerator json, Conditions conditions) throws IOException {
        SampleWriter.stated(json, "beam_energy_kev", conditions.beamEnergyKev());
        SampleWriter.stated(json, "live_time_s", conditions.liveTimeS());
        SampleWriter.stated(json, "feature_size_um", conditions.featureSizeUm());
        statedPercent(json, "total_percent", conditions.rawTotal());
        stated(json, "position", conditions.position().map(Position::words));
        SampleWriter.stated(json, "tilt_deg", conditions.tiltDeg());
    }

    private static void write(JsonGenerator json, ReportedValue value) throws IOException {
        json.writeStartObject();
        json.writeStringField("state", state(value));
        if (value instanceof ReportedValue.Measured measured) {
            json.writeNumberField("value", Numbers.stated(measured));
            statedPercent(json, "u", measured.uncertainty());
            if (measured.counts().isPresent()) {
                json.writeNumberField("net_counts", measured.counts().get().net());
                json.writeNumberField("background_counts", measured.counts().get().background());
            }
            statedPercent(json, "limit", measured.limit());
            stated(json, "line", measured.line());
        } else if (value instanceof ReportedValue.BelowLimit below) {
            json.writeNumberField("limit", Numbers.stated(below.limitFraction()));
        } else if (value instanceof ReportedValue.NotDetected not) {
            statedPercent(json, "limit", not.limitFraction());
        }
        json.writeStringField("as_reported", value.asReported());
        json.writeEndObject();
    }

    /** Which of the four different things a value is. */
    public static String state(ReportedValue value) {
        return value instanceof ReportedValue.Measured ? "measured"
            : value instanceof ReportedValue.BelowLimit ? "below_limit"
            : value instanceof ReportedValue.NotDetected ? "not_detected" : "not_reported";
    }

    private static void stated(JsonGenerator json, String name, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            json.writeStringField(name, value.get());
        }
    }

    private static void statedPercent(JsonGenerator json, String name, OptionalDouble fraction) throws IOException {
        if (fraction.isPresent()) {
            json.writeNumberField(name, Numbers.stated(fraction.getAsDouble()));
        }
    }
}
