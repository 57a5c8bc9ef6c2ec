package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.xray.ElementReading;
import surfeit.xray.Estimate;
import surfeit.xray.FilmReading;
import surfeit.xray.Line;
import surfeit.xray.Patch;
import surfeit.xray.PatchReading;
import surfeit.xray.SurfaceReadings;
import surfeit.xray.ThinFilm;
import surfeit.xray.TiltReading;

/** Writes what a tilt, a film or a small patch makes of the readings of a material. */
final class SurfaceReadingWriter {
    private static final double MICROGRAM_PER_GRAM = 1e6;
    private static final double NM_PER_UM = 1000;

    private SurfaceReadingWriter() {
    }

    /** The film and the patch asked about; null where there is none. */
    static void question(JsonGenerator json, SurfaceReadings.Question question) throws IOException {
        nullable(json, "film", question.film(), SurfaceReadingWriter::film);
        nullable(json, "patch", question.patch(), SurfaceReadingWriter::patch);
    }

    private static void film(JsonGenerator json, ThinFilm film) throws IOException {
        json.writeNumberField("thickness_nm", film.thicknessNm());
        json.writeNumberField("mass_thickness_ug_cm2", film.massThickness() * MICROGRAM_PER_GRAM);
        SignalDepthDocument.material(json, film.material());
    }

    private static void patch(JsonGenerator json, Patch patch) throws IOException {
        json.writeNumberField("diameter_um", patch.diameterNm() / NM_PER_UM);
        if (patch.thicknessNm().isPresent()) {
            json.writeNumberField("thickness_nm", patch.thicknessNm().getAsDouble());
        } else {
            json.writeNullField("thickness_nm");
        }
        SignalDepthDocument.material(json, patch.material());
    }

    /** What is read at one beam energy. */
    static void readings(JsonGenerator json, SurfaceReadings.AtBeamEnergy readings) throws IOException {
        nullable(json, "reads_tilted", readings.tilt(), SurfaceReadingWriter::tilt);
        nullable(json, "reads_with_film", readings.film(), SurfaceReadingWriter::film);
        nullable(json, "reads_on_patch", readings.patch(), SurfaceReadingWriter::patch);
    }

    private static void tilt(JsonGenerator json, TiltReading reading) throws IOException {
        json.writeArrayFieldStart("elements");
        for (TiltReading.OfElement one : reading.elements()) {
            start(json, one.line());
            read(json, Optional.of(one.read()));
            json.writeEndObject();
        }
        json.writeEndArray();
        withoutLine(json, reading.withoutLine());
    }

    private static void film(JsonGenerator json, FilmReading reading) throws IOException {
        json.writeArrayFieldStart("elements");
        for (FilmReading.OfElement one : reading.elements()) {
            start(json, one.line());
            json.writeNumberField("transmission", one.transmission());
            bounded(json, "film_over_pure", one.overPure(), 1);
            Written.number(json, "mass_percent_without_film", one.bare().isEmpty() ? one.bare()
                : OptionalDouble.of(one.bare().getAsDouble() * 100));
            read(json, one.read());
            json.writeEndObject();
        }
        json.writeEndArray();
        withoutLine(json, reading.withoutLine());
    }

    private static void patch(JsonGenerator json, PatchReading reading) throws IOException {
        json.writeArrayFieldStart("elements");
        for (PatchReading.OfElement one : reading.elements()) {
            start(json, one.line());
            SignalDepthDocument.bounded(json, "share_of_patch", one.share());
            read(json, Optional.of(one.read()));
            json.writeEndObject();
        }
        json.writeEndArray();
        withoutLine(json, reading.withoutLine());
    }

    private static void start(JsonGenerator json, Line line) throws IOException {
        json.writeStartObject();
        json.writeStringField("element", line.element().symbol());
        json.writeStringField("line", line.name());
    }

    private static void read(JsonGenerator json, Optional<ElementReading> reading) throws IOException {
        bounded(json, "mass_percent", reading.map(ElementReading::massFraction), 100);
        bounded(json, "atomic_percent", reading.map(ElementReading::atomicFraction), 100);
    }

    private static void bounded(JsonGenerator json, String name, Optional<Estimate> estimate, double scale)
            throws IOException {
        if (estimate.isEmpty()) {
            json.writeNullField(name);
            json.writeNullField(name + "_low");
            json.writeNullField(name + "_high");
        } else {
            json.writeNumberField(name, estimate.get().value() * scale);
            json.writeNumberField(name + "_low", estimate.get().low() * scale);
            json.writeNumberField(name + "_high", estimate.get().high() * scale);
        }
    }

    private static void withoutLine(JsonGenerator json, List<Element> elements) throws IOException {
        json.writeArrayFieldStart("elements_without_line");
        for (Element element : elements) {
            json.writeString(element.symbol());
        }
        json.writeEndArray();
    }

    /** Writes the members of one object. */
    private interface Members<T> {
        void write(JsonGenerator json, T value) throws IOException;
    }

    private static <T> void nullable(JsonGenerator json, String name, Optional<T> value, Members<T> members)
            throws IOException {
        if (value.isEmpty()) {
            json.writeNullField(name);
            return;
        }
        json.writeObjectFieldStart(name);
        members.write(json, value.get());
        json.writeEndObject();
    }
}
