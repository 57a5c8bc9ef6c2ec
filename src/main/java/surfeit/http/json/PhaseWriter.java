package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import surfeit.composition.Phase;
import surfeit.segregation.answer.DiffractionMismatch;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.PhaseReading;
import surfeit.segregation.answer.SpotSpread;

/** Writes what groups show of the known phases, which phases these are, and what diffraction does not tell alike. */
final class PhaseWriter {
    private static final Estimate NONE = new Estimate(Double.NaN, Double.NaN, Double.NaN);

    private PhaseWriter() {
    }

    static void write(JsonGenerator json, String name, Optional<PhaseReading> reading) throws IOException {
        json.writeFieldName(name);
        if (reading.isEmpty()) {
            json.writeNull();
            return;
        }
        json.writeStartObject();
        json.writeStringField("reading", reading.get().kind().word());
        json.writeStringField("detail", reading.get().detail());
        json.writeArrayFieldStart("phases");
        for (PhaseReading.Fit fit : reading.get().phases()) {
            json.writeStartObject();
            json.writeStringField("phase", fit.phase().name());
            json.writeStringField("system", fit.phase().system());
            json.writeBooleanField("fits", fit.fits());
            Written.number(json, "p_value_adjusted", fit.pAdjusted());
            json.writeEndObject();
        }
        json.writeEndArray();
        writeLine(json, reading.get().tieLine(), reading.get().kind() == PhaseReading.Kind.ONE_OR_THE_OTHER);
        json.writeArrayFieldStart("mixture_of_three");
        for (PhaseReading.MassShare share : reading.get().ofThree()) {
            json.writeStartObject();
            json.writeStringField("phase", share.phase().name());
            Written.percent(json, "share_of_mass_percent", share.ofMass());
            json.writeEndObject();
        }
        json.writeEndArray();
        writeAtLeast(json, reading.get().mainElement());
        json.writeEndObject();
    }

    /** @param noShares where the mean is the composition of nothing, its shares would mean nothing */
    private static void writeLine(JsonGenerator json, Optional<PhaseReading.OnTieLine> tieLine, boolean noShares)
            throws IOException {
        json.writeFieldName("tie_line");
        if (tieLine.isEmpty()) {
            json.writeNull();
            return;
        }
        PhaseReading.OnTieLine line = tieLine.get();
        json.writeStartObject();
        json.writeStringField("from", line.from().name());
        json.writeStringField("to", line.to().name());
        Written.estimate(json, "position", line.position());
        Written.percentEstimate(json, "share_of_atoms_percent", noShares ? NONE : line.shareOfAtoms());
        Written.percentEstimate(json, "share_of_mass_percent", noShares ? NONE : line.shareOfMass());
        Written.percentEstimate(json, "share_of_volume_percent", noShares ? NONE : line.shareOfVolume().orElse(NONE));
        Written.percent(json, "nominal_share_of_mass_percent",
            line.nominal().map(share -> share.ofMass()).orElse(Double.NaN));
        Written.percent(json, "beside_atomic_percent", line.beside());
        writeSpots(json, line.spots());
        json.writeEndObject();
    }

    private static void writeSpots(JsonGenerator json, SpotSpread spots) throws IOException {
        json.writeObjectFieldStart("spots");
        json.writeStringField("pattern", spots.pattern().word());
        json.writeNumberField("spot_count", spots.spots());
        json.writeNumberField("at_from_count", spots.atFrom());
        json.writeNumberField("between_count", spots.between());
        json.writeNumberField("at_to_count", spots.atTo());
        Written.number(json, "lowest_position", spots.lowest());
        Written.number(json, "highest_position", spots.highest());
        json.writeFieldName("clusters");
        if (spots.clusters().isEmpty()) {
            json.writeNull();
        } else {
            SpotSpread.Clusters clusters = spots.clusters().get();
            json.writeStartObject();
            json.writeNumberField("lower_count", clusters.lowerCount());
            Written.number(json, "lower_position", clusters.lowerCentre());
            json.writeNumberField("upper_count", clusters.upperCount());
            Written.number(json, "upper_position", clusters.upperCentre());
            Written.percent(json, "explained_percent", clusters.explained());
            json.writeBooleanField("at_both_phases", clusters.atBothPhases());
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    private static void writeAtLeast(JsonGenerator json, Optional<PhaseReading.AtLeast> bound) throws IOException {
        json.writeFieldName("at_least");
        if (bound.isEmpty()) {
            json.writeNull();
            return;
        }
        json.writeStartObject();
        json.writeStringField("element", bound.get().element().symbol());
        Written.percent(json, "atomic_percent", bound.get().atomicFraction());
        json.writeEndObject();
    }

    /** The phases that groups were compared with, as an alloy states them. */
    static void writeKnown(JsonGenerator json, List<Phase> phases) throws IOException {
        json.writeArrayFieldStart("known_phases");
        for (Phase phase : phases) {
            AlloyDocuments.write(json, phase);
        }
        json.writeEndArray();
    }

    static void writeDiffraction(JsonGenerator json, List<DiffractionMismatch> mismatches) throws IOException {
        json.writeArrayFieldStart("diffraction");
        for (DiffractionMismatch mismatch : mismatches) {
            json.writeStartObject();
            json.writeStringField("phase", mismatch.phase());
            json.writeStringField("shown_by", mismatch.kind().word());
            Written.texts(json, "groups", mismatch.groups());
            Written.texts(json, "possible_reasons", mismatch.possibleReasons());
            json.writeEndObject();
        }
        json.writeEndArray();
    }
}
