package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Optional;
import surfeit.xray.BeamAdvice;
import surfeit.xray.BeamQuery;
import surfeit.xray.BeamQuestion;
import surfeit.xray.BeamRow;
import surfeit.xray.Estimate;
import surfeit.xray.SignalDepth;

/** Writes which beam energy to take: the energies as rows, a recommendation and its reason. */
final class BeamAdviceDocument {
    private BeamAdviceDocument() {
    }

    static void write(JsonGenerator json, BeamAdvice advice) throws IOException {
        BeamQuery query = advice.query();
        json.writeStartObject();
        json.writeStringField("answer", advice.answer());
        writeRecommendation(json, advice.recommendation());
        json.writeStringField("question", BeamGoalJson.word(query.question()));
        Written.number(json, "patch_diameter_um",
            query.question() instanceof BeamQuestion.Patch patch ? patch.diameterUm() : Double.NaN);
        json.writeNumberField("density_g_cm3", query.material().densityGramPerCm3());
        json.writeBooleanField("density_given", query.material().densityGiven());
        json.writeNumberField("take_off_angle_deg", query.takeOffDeg());
        json.writeNumberField("detector_fwhm_ev", query.resolution().fwhmAtMnKaEv());
        json.writeNumberField("probe_diameter_nm", query.probeDiameterNm());
        Written.symbols(json, "elements_never_seen", advice.neverSeen());
        json.writeArrayFieldStart("beam_energies");
        for (BeamRow row : advice.rows()) {
            write(json, row);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void writeRecommendation(JsonGenerator json, Optional<BeamAdvice.Recommendation> recommendation)
            throws IOException {
        json.writeFieldName("recommendation");
        if (recommendation.isEmpty()) {
            json.writeNull();
            return;
        }
        json.writeStartObject();
        json.writeNumberField("beam_energy_kev", recommendation.get().beamEnergyKev());
        Written.number(json, "second_beam_energy_kev", recommendation.get().secondBeamEnergyKev());
        json.writeStringField("reason", recommendation.get().reason());
        json.writeEndObject();
    }

    private static void write(JsonGenerator json, BeamRow row) throws IOException {
        json.writeStartObject();
        json.writeNumberField("beam_energy_kev", row.beamEnergyKev());
        json.writeArrayFieldStart("lines");
        for (SignalDepth line : row.lines()) {
            write(json, line, Optional.ofNullable(row.patchShares().get(line.element())));
        }
        json.writeEndArray();
        Written.symbols(json, "elements_without_line", row.withoutLine());
        json.writeEndObject();
    }

    private static void write(JsonGenerator json, SignalDepth line, Optional<Estimate> patchShare) throws IOException {
        json.writeStartObject();
        json.writeStringField("element", line.element().symbol());
        json.writeStringField("line", line.line().name());
        json.writeStringField("excitation", SignalDepthDocument.word(line.excitation()));
        json.writeNumberField("line_energy_kev", line.line().energyKev());
        json.writeNumberField("edge_energy_kev", line.line().edgeEnergyKev());
        json.writeNumberField("overvoltage", line.overvoltage());
        SignalDepthDocument.bounded(json, "absorption_factor", line.absorptionFactor());
        SignalDepthDocument.bounded(json, "depth_50_nm", line.emitted().depth50Nm());
        SignalDepthDocument.bounded(json, "depth_90_nm", line.emitted().depth90Nm());
        json.writeNumberField("lateral_diameter_nm", line.lateralDiameterNm());
        Written.percent(json, "top_10_nm_share_percent", BeamRow.filmShare(line));
        Written.percent(json, "patch_share_percent", patchShare.map(Estimate::value).orElse(Double.NaN));
        Written.percent(json, "patch_share_percent_low", patchShare.map(Estimate::low).orElse(Double.NaN));
        Written.percent(json, "patch_share_percent_high", patchShare.map(Estimate::high).orElse(Double.NaN));
        SignalDepthDocument.overlaps(json, line.overlaps());
        json.writeEndObject();
    }
}
