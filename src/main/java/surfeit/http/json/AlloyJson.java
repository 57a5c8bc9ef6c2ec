package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.composition.Nominal;
import surfeit.lab.Alloy;
import surfeit.lab.Problem;
import surfeit.lab.StoredAlloy;

/** An alloy of the catalogue as JSON: its name, nominal composition, phases and source. */
public final class AlloyJson {
    private static final Keys<Fields> KEYS = new Keys<Fields>("an alloy")
        .key("name", (in, fields) -> fields.name = in.text())
        .key("nominal", (in, fields) -> {
            fields.nominalGiven = true;
            fields.nominal = NominalJson.read(in);
        })
        .key("phases", (in, fields) -> in.array("a list of phases", () -> in.text().ifPresent(fields.phases::add)))
        .key("source", (in, fields) -> fields.source = in.text())
        .ignored("alloy", "revision", "origin", "changed_time", "changed_by", "links");

    private AlloyJson() {
    }

    private static final class Fields {
        private Optional<String> name = Optional.empty();
        private Optional<Nominal> nominal = Optional.empty();
        private boolean nominalGiven;
        private final List<String> phases = new ArrayList<>();
        private Optional<String> source = Optional.empty();
    }

    /** Reads a body that states the alloy with this id. @throws surfeit.lab.ProblemException with every fault */
    public static Alloy read(String id, InputStream body) throws IOException {
        return JsonDocument.read(body, in -> {
            long before = in.faults().count();
            Fields fields = new Fields();
            if (in.object(KEYS, fields)) {
                requireStated(in, fields);
            }
            return in.faults().count() > before ? Optional.empty() : Optional.of(new Alloy(id, fields.name.orElse(id),
                fields.nominal.orElseThrow(), fields.phases, fields.source.orElseThrow()));
        });
    }

    private static void requireStated(JsonInput in, Fields fields) {
        if (!fields.nominalGiven) {
            in.missing("", "nominal", Problem.NOMINAL_INCOMPLETE, "Expected \"nominal\", the composition the alloy should have.");
        }
        if (fields.source.map(String::isBlank).orElse(true)) {
            in.missing("", "source", Problem.MALFORMED_JSON, "Expected \"source\", where the composition comes from: a certificate, "
                + "a standard, a book.");
        }
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
        Written.texts(json, "phases", alloy.phases());
        json.writeStringField("source", alloy.source());
        json.writeObjectFieldStart("links");
        json.writeStringField("self", "/v1/alloys/" + alloy.id());
        json.writeEndObject();
        json.writeEndObject();
    }

    /** All of them, in one list. */
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
