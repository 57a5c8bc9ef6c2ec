package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.element.ElementTable;
import surfeit.xray.Excitation;
import surfeit.xray.Line;
import surfeit.xray.LineChoice;
import surfeit.xray.LineTable;

/** Writes the figures of an element the service calculates with, its X-ray lines, and which tables they come from. */
public final class ElementDocument {
    private ElementDocument() {
    }

    /** @param beamEnergyKev tells how well each line is excited, and which one an analyst would take */
    public static void write(JsonGenerator json, Element element, OptionalDouble beamEnergyKev) throws IOException {
        json.writeStartObject();
        json.writeStringField("symbol", element.symbol());
        json.writeStringField("name", element.name());
        json.writeNumberField("atomic_number", element.atomicNumber());
        json.writeNumberField("atomic_weight_g_per_mol", element.atomicWeight());
        Written.number(json, "atomic_weight_g_per_mol_u", element.weightUncertainty());
        Written.number(json, "density_g_per_cm3", element.density());
        json.writeBooleanField("gas_at_room_temperature", element.gasAtRoomTemperature());
        Written.number(json, "beam_energy_kev", beamEnergyKev);
        Optional<Line> chosen = beamEnergyKev.isPresent()
            ? LineChoice.at(element, beamEnergyKev.getAsDouble()).chosen() : Optional.empty();
        Written.text(json, "chosen_line", chosen.map(Line::name));
        json.writeArrayFieldStart("lines");
        for (Line line : LineTable.standard().lines(element)) {
            write(json, line, beamEnergyKev);
        }
        json.writeEndArray();
        json.writeObjectFieldStart("reference_tables");
        json.writeStringField("atomic_weights", ReferenceTables.atomicWeights(ElementTable.standard()));
        json.writeEndObject();
        json.writeObjectFieldStart("links");
        json.writeStringField("elements", "/shared/reference/elements.csv");
        json.writeStringField("lines", "/shared/reference/main-lines.csv");
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void write(JsonGenerator json, Line line, OptionalDouble beamEnergyKev) throws IOException {
        json.writeStartObject();
        json.writeStringField("line", line.name());
        json.writeNumberField("line_energy_kev", line.energyKev());
        json.writeStringField("edge", line.edge());
        json.writeNumberField("edge_energy_kev", line.edgeEnergyKev());
        json.writeNumberField("fluorescence_yield", line.fluorescenceYield());
        if (beamEnergyKev.isPresent()) {
            json.writeNumberField("overvoltage", line.overvoltage(beamEnergyKev.getAsDouble()));
            json.writeStringField("excitation", SignalDepthDocument.word(Excitation.of(line, beamEnergyKev.getAsDouble())));
        } else {
            json.writeNullField("overvoltage");
            json.writeNullField("excitation");
        }
        json.writeEndObject();
    }
}
