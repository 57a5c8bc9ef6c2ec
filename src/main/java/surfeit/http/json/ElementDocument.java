package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import surfeit.element.Element;
import surfeit.element.ElementTable;

/** Writes the figures of an element the service calculates with, and which table they come from. */
public final class ElementDocument {
    private ElementDocument() {
    }

    public static void write(JsonGenerator json, Element element, ElementTable table) throws IOException {
        json.writeStartObject();
        json.writeStringField("symbol", element.symbol());
        json.writeStringField("name", element.name());
        json.writeNumberField("atomic_number", element.atomicNumber());
        json.writeNumberField("atomic_weight_g_per_mol", element.atomicWeight());
        Written.number(json, "atomic_weight_g_per_mol_u", element.weightUncertainty());
        Written.number(json, "density_g_per_cm3", element.density());
        json.writeBooleanField("gas_at_room_temperature", element.gasAtRoomTemperature());
        json.writeObjectFieldStart("reference_tables");
        json.writeStringField("atomic_weights", ReferenceTables.atomicWeights(table));
        json.writeEndObject();
        json.writeObjectFieldStart("links");
        json.writeStringField("table", "/shared/reference/elements.csv");
        json.writeEndObject();
        json.writeEndObject();
    }
}
