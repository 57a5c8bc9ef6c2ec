package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.spot.Judgement;
import surfeit.spot.PreparationStep;
import surfeit.spot.Sample;

/** Writes the description of a sample in the form it is read in, defaults included; what is not stated is left out. */
final class SampleWriter {
    private SampleWriter() {
    }

    /** Writes its keys into the open object. */
    static void writeFields(JsonGenerator json, Sample sample) throws IOException {
        writeComposition(json, sample);
        json.writeStringField("accuracy_class", sample.accuracyClass().words());
        json.writeStringField("form", sample.form().words());
        writeSetUp(json, sample);
        writeJudgement(json, sample.judgement());
        writeMaking(json, sample);
        json.writeStringField("description", sample.description());
        json.writeBooleanField("spots_independent", sample.spotsIndependent());
    }

    private static void writeComposition(JsonGenerator json, Sample sample) throws IOException {
        if (sample.alloy().isPresent()) {
            json.writeStringField("alloy", sample.alloy().get());
        }
        if (sample.nominal().isPresent()) {
            json.writeFieldName("nominal");
            NominalJson.write(json, sample.nominal().get());
        }
        json.writeArrayFieldStart("excluded_elements");
        for (Element element : sample.excludedElements()) {
            json.writeString(element.symbol());
        }
        json.writeEndArray();
    }

    private static void writeSetUp(JsonGenerator json, Sample sample) throws IOException {
        Sample.Geometry geometry = sample.geometry();
        stated(json, "beam_energy_kev", geometry.beamEnergyKev());
        stated(json, "take_off_angle_deg", geometry.takeOffAngleDeg());
        stated(json, "detector_fwhm_ev", geometry.detectorFwhmEv());
        if (sample.coating().isPresent()) {
            json.writeObjectFieldStart("coating");
            json.writeStringField("element", sample.coating().get().element().symbol());
            stated(json, "thickness_nm", sample.coating().get().thicknessNm());
            json.writeEndObject();
        }
        if (sample.mount().isPresent()) {
            json.writeStringField("mount", sample.mount().get());
        }
        stated(json, "particle_diameter_um", geometry.particleDiameterUm());
    }

    private static void writeMaking(JsonGenerator json, Sample sample) throws IOException {
        json.writeArrayFieldStart("preparation");
        for (PreparationStep step : sample.preparation()) {
            json.writeStartObject();
            json.writeStringField("step", step.step());
            if (step.reagent().isPresent()) {
                json.writeStringField("reagent", step.reagent().get());
            }
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("diffraction_phases");
        for (String phase : sample.diffractionPhases()) {
            json.writeString(phase);
        }
        json.writeEndArray();
    }

    static void writeJudgement(JsonGenerator json, Judgement judgement) throws IOException {
        json.writeNumberField("margin_odds_ratio", judgement.marginOddsRatio());
        json.writeNumberField("alpha", judgement.alpha());
        json.writeNumberField("u_level", judgement.uLevel());
        json.writeNumberField("reference_correlation", judgement.referenceCorrelation());
        json.writeStringField("spot_centre", judgement.spotCentre().words());
    }

    static void stated(JsonGenerator json, String name, OptionalDouble value) throws IOException {
        if (value.isPresent()) {
            json.writeNumberField(name, value.getAsDouble());
        }
    }
}
