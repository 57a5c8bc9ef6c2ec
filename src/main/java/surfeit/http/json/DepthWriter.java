package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import surfeit.segregation.answer.DepthReading;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.SkinLimit;

/** Writes how deep an enrichment reaches: features at several beam energies, and how thick a skin could be at most. */
final class DepthWriter {
    private static final double MICROGRAM_PER_GRAM = 1e6;

    private DepthWriter() {
    }

    static void write(JsonGenerator json, String name, Optional<SkinLimit> limit) throws IOException {
        json.writeFieldName(name);
        if (limit.isEmpty()) {
            json.writeNull();
            return;
        }
        json.writeStartObject();
        json.writeStringField("element", limit.get().element().symbol());
        Written.percent(json, "most_mass_percent", limit.get().mostMassShare());
        Written.number(json, "thickness_nm", limit.get().thicknessNm());
        Written.number(json, "most_nm", limit.get().mostNm());
        Written.number(json, "sampled_depth_nm", limit.get().sampledDepthNm());
        json.writeBooleanField("cannot_cover_particle", limit.get().cannotCoverParticle());
        json.writeEndObject();
    }

    static void write(JsonGenerator json, List<DepthReading> depths) throws IOException {
        json.writeArrayFieldStart("depths");
        for (DepthReading depth : depths) {
            json.writeStartObject();
            json.writeStringField("feature", depth.feature());
            json.writeStringField("element", depth.element().symbol());
            json.writeStringField("reading", depth.word().word());
            json.writeStringField("detail", depth.detail());
            json.writeArrayFieldStart("beam_energies");
            for (DepthReading.AtEnergy at : depth.energies()) {
                write(json, at);
            }
            json.writeEndArray();
            Written.number(json, "stays_p_value_adjusted", depth.pStays());
            Written.number(json, "film_p_value_adjusted", depth.pFilm());
            write(json, depth.film());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void write(JsonGenerator json, DepthReading.AtEnergy at) throws IOException {
        json.writeStartObject();
        json.writeNumberField("beam_energy_kev", at.beamEnergyKev());
        json.writeStringField("group", at.group());
        json.writeStringField("line", at.line());
        Written.number(json, "mean_depth_nm", at.meanDepthNm());
        Written.estimate(json, "odds_ratio", at.oddsRatio());
        Written.number(json, "film_odds_ratio", at.filmOddsRatio());
        json.writeEndObject();
    }

    private static void write(JsonGenerator json, Optional<DepthReading.Film> film) throws IOException {
        json.writeFieldName("film");
        if (film.isEmpty()) {
            json.writeNull();
            return;
        }
        Estimate mass = film.get().massThickness();
        json.writeStartObject();
        Written.estimate(json, "mass_thickness_ug_cm2", new Estimate(mass.value() * MICROGRAM_PER_GRAM,
            mass.low() * MICROGRAM_PER_GRAM, mass.high() * MICROGRAM_PER_GRAM));
        Written.estimate(json, "thickness_nm",
            film.get().thicknessNm().orElse(new Estimate(Double.NaN, Double.NaN, Double.NaN)));
        json.writeEndObject();
    }
}
