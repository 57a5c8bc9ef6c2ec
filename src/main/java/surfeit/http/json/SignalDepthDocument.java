package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import surfeit.element.Element;
import surfeit.xray.DepthCaveat;
import surfeit.xray.DepthFigures;
import surfeit.xray.Estimate;
import surfeit.xray.LineChoice;
import surfeit.xray.LineTable;
import surfeit.xray.MassAbsorption;
import surfeit.xray.Material;
import surfeit.xray.Overlap;
import surfeit.xray.SignalDepth;
import surfeit.xray.SignalDepths;
import surfeit.xray.SurfaceReadings;

/** Writes where the X-rays of a composition come from, per beam energy and line; bounds as {@code _low} and {@code _high}. */
public final class SignalDepthDocument {
    private SignalDepthDocument() {
    }

    public static void write(JsonGenerator json, SurfaceReadings answer) throws IOException {
        SignalDepths depths = answer.depths();
        json.writeStartObject();
        json.writeObjectFieldStart("material");
        material(json, depths.query().material());
        json.writeNumberField("backscatter_coefficient", depths.backscatterCoefficient());
        json.writeEndObject();
        json.writeNumberField("take_off_angle_deg", depths.query().takeOffDeg());
        json.writeNumberField("tilt_deg", depths.query().tiltDeg());
        json.writeNumberField("tilt_azimuth_deg", depths.query().tiltAzimuthDeg());
        json.writeNumberField("effective_take_off_angle_deg", depths.query().effectiveTakeOffDeg());
        json.writeNumberField("probe_diameter_nm", depths.query().probeDiameterNm());
        json.writeNumberField("detector_fwhm_ev", depths.query().resolution().fwhmAtMnKaEv());
        SurfaceReadingWriter.question(json, answer.question());
        json.writeArrayFieldStart("beam_energies");
        for (int i = 0; i < depths.byBeamEnergy().size(); i++) {
            write(json, depths.byBeamEnergy().get(i), answer.readings().get(i));
        }
        json.writeEndArray();
        json.writeObjectFieldStart("reference_tables");
        json.writeStringField("main_lines", "sha256:" + LineTable.standard().mainLinesSha256());
        json.writeStringField("lines", "sha256:" + LineTable.standard().allLinesSha256());
        json.writeStringField("mass_absorption", "sha256:" + MassAbsorption.standard().sha256());
        json.writeEndObject();
        json.writeEndObject();
    }

    /** What a solid consists of, into an object that is open. */
    static void material(JsonGenerator json, Material material) throws IOException {
        json.writeNumberField("density_g_cm3", material.densityGramPerCm3());
        json.writeBooleanField("density_given", material.densityGiven());
        json.writeArrayFieldStart("elements");
        for (Map.Entry<Element, Double> part : material.massFractions().entrySet()) {
            json.writeStartObject();
            json.writeStringField("element", part.getKey().symbol());
            json.writeNumberField("mass_percent", Numbers.inPercent(part.getValue()));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void write(JsonGenerator json, SignalDepths.AtBeamEnergy at,
                              SurfaceReadings.AtBeamEnergy readings) throws IOException {
        json.writeStartObject();
        json.writeNumberField("beam_energy_kev", at.beamEnergyKev());
        json.writeNumberField("electron_range_nm", at.electronRangeNm());
        json.writeArrayFieldStart("lines");
        for (SignalDepth depth : at.lines()) {
            write(json, depth);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("elements_without_line");
        for (LineChoice choice : at.withoutLine()) {
            json.writeString(choice.element().symbol());
        }
        json.writeEndArray();
        SurfaceReadingWriter.readings(json, readings);
        json.writeEndObject();
    }

    private static void write(JsonGenerator json, SignalDepth depth) throws IOException {
        json.writeStartObject();
        json.writeStringField("element", depth.element().symbol());
        json.writeStringField("line", depth.line().name());
        json.writeBooleanField("line_of_choice", depth.lineOfChoice());
        json.writeStringField("excitation", word(depth.excitation()));
        json.writeNumberField("line_energy_kev", depth.line().energyKev());
        json.writeNumberField("edge_energy_kev", depth.line().edgeEnergyKev());
        json.writeNumberField("overvoltage", depth.overvoltage());
        json.writeNumberField("detector_fwhm_ev", depth.fwhmEv());
        bounded(json, "mass_absorption_cm2_g", depth.massAbsorption());
        bounded(json, "absorption_factor", depth.absorptionFactor());
        figures(json, depth.emitted());
        json.writeNumberField("lateral_diameter_nm", depth.lateralDiameterNm());
        json.writeNumberField("xray_range_nm", depth.xrayRangeNm());
        json.writeObjectFieldStart("generated");
        figures(json, depth.generated());
        json.writeEndObject();
        overlaps(json, depth.overlaps());
        json.writeArrayFieldStart("caveats");
        for (DepthCaveat caveat : depth.caveats()) {
            json.writeStartObject();
            json.writeStringField("code", word(caveat).replace(' ', '-'));
            json.writeStringField("detail", caveat.detail());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    /** Depths of the X-rays that reach the detector, or of those that arise. */
    private static void figures(JsonGenerator json, DepthFigures figures) throws IOException {
        bounded(json, "mean_depth_nm", figures.meanNm());
        bounded(json, "depth_50_nm", figures.depth50Nm());
        bounded(json, "depth_90_nm", figures.depth90Nm());
        json.writeArrayFieldStart("share_of_top");
        for (DepthFigures.TopShare top : figures.shareOfTop()) {
            json.writeStartObject();
            json.writeNumberField("depth_nm", top.depthNm());
            bounded(json, "share", top.share());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    static void overlaps(JsonGenerator json, List<Overlap> overlaps) throws IOException {
        json.writeArrayFieldStart("overlaps");
        for (Overlap overlap : overlaps) {
            json.writeStartObject();
            json.writeStringField("with", overlap.with());
            json.writeNumberField("separation_ev", overlap.separationEv());
            json.writeNumberField("detector_fwhm_ev", overlap.fwhmEv());
            json.writeStringField("severity", word(overlap.severity()));
            json.writeBooleanField("borderline", overlap.borderline());
            if (Double.isFinite(overlap.relativeStrength())) {
                json.writeNumberField("relative_strength", overlap.relativeStrength());
            } else {
                json.writeNullField("relative_strength");
            }
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    static void bounded(JsonGenerator json, String name, Estimate estimate) throws IOException {
        json.writeNumberField(name, estimate.value());
        json.writeNumberField(name + "_low", estimate.low());
        json.writeNumberField(name + "_high", estimate.high());
    }

    static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
