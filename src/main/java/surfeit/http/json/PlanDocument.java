package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Optional;
import java.util.OptionalInt;
import surfeit.segregation.plan.MeasurementPlan;
import surfeit.xray.BeamAdvice;

/** Writes how much to measure, the power curve as data, what would help, and at which beam energy. */
public final class PlanDocument {
    private PlanDocument() {
    }

    /** Writes a plan, the advice on the beam energy, or both; one of them is there. */
    public static void write(JsonGenerator json, Optional<MeasurementPlan> plan, Optional<BeamAdvice> beam)
            throws IOException {
        json.writeStartObject();
        if (plan.isPresent()) {
            write(json, plan.get());
        } else {
            json.writeStringField("answer", beam.orElseThrow().answer());
        }
        json.writeFieldName("beam_advice");
        if (beam.isPresent()) {
            BeamAdviceDocument.write(json, beam.get());
        } else {
            json.writeNull();
        }
        json.writeEndObject();
    }

    private static void write(JsonGenerator json, MeasurementPlan plan) throws IOException {
        json.writeStringField("answer", plan.answer());
        Written.texts(json, "advice", plan.advice());
        json.writeStringField("element", plan.element().symbol());
        Written.percent(json, "nominal_atomic_percent", plan.nominal());
        json.writeNumberField("wanted_factor", plan.wantedFactor());
        json.writeNumberField("wanted_odds_ratio", plan.wantedOddsRatio());
        json.writeNumberField("spots_per_particle_count", plan.spotsPerParticle());
        json.writeNumberField("power", plan.power());
        json.writeNumberField("alpha", plan.alpha());
        json.writeNumberField("test_count", plan.tests());
        json.writeObjectFieldStart("scatter");
        json.writeNumberField("between_log_odds", plan.scatter().between());
        Written.number(json, "within_log_odds", plan.scatter().within());
        whole(json, "estimated_from_particle_count", plan.scatter().estimatedFrom());
        json.writeEndObject();
        json.writeNumberField("calibration_log_odds_u", plan.sharedUncertainty());
        json.writeNumberField("reference_spot_count", plan.referenceSpots());
        whole(json, "particle_count", plan.particles());
        whole(json, "particle_count_if_scatter_is_high", plan.particlesIfScatterIsHigh());
        json.writeArrayFieldStart("by_spots");
        for (MeasurementPlan.SpotsRow row : plan.bySpots()) {
            json.writeStartObject();
            json.writeNumberField("spots_per_particle_count", row.spotsPerParticle());
            whole(json, "particle_count", row.particles());
            whole(json, "spot_count", row.spots());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("power_curve");
        for (MeasurementPlan.CurvePoint point : plan.curve()) {
            json.writeStartObject();
            json.writeNumberField("particle_count", point.particles());
            json.writeNumberField("power", point.power());
            json.writeEndObject();
        }
        json.writeEndArray();
        writeGiven(json, plan);
        writeLimit(json, plan.limit());
        json.writeArrayFieldStart("remedies");
        for (MeasurementPlan.Remedy remedy : plan.remedies()) {
            json.writeStartObject();
            json.writeStringField("what", remedy.kind().word());
            json.writeNumberField("calibration_log_odds_u", remedy.sharedUncertainty());
            whole(json, "particle_count", remedy.particles());
            Written.number(json, "smallest_factor", remedy.smallestFactor());
            json.writeEndObject();
        }
        json.writeEndArray();
        GroupWriter.writeCaveats(json, plan.caveats());
    }

    private static void writeGiven(JsonGenerator json, MeasurementPlan plan) throws IOException {
        if (plan.given().isEmpty()) {
            json.writeNullField("given");
            return;
        }
        MeasurementPlan.Given given = plan.given().get();
        json.writeObjectFieldStart("given");
        Written.text(json, "sentence", plan.givenInWords());
        json.writeNumberField("particle_count", given.particles());
        json.writeNumberField("spots_per_particle_count", given.spotsPerParticle());
        json.writeStringField("scope", given.scope().word());
        Written.number(json, "power", given.power());
        Written.number(json, "smallest_enrichment_factor", given.smallestFactorUp());
        Written.number(json, "smallest_depletion_factor", given.smallestFactorDown());
        Written.number(json, "smallest_odds_ratio", given.smallestOddsRatio());
        Written.number(json, "power_for_consistent", given.powerForConsistent());
        Written.number(json, "smallest_margin_odds_ratio", given.smallestMarginOddsRatio());
        json.writeEndObject();
    }

    private static void writeLimit(JsonGenerator json, MeasurementPlan.Limit limit) throws IOException {
        json.writeObjectFieldStart("limit");
        Written.number(json, "smallest_factor", limit.smallestFactor());
        Written.number(json, "smallest_odds_ratio", limit.smallestOddsRatio());
        json.writeNumberField("margin_odds_ratio", limit.marginOddsRatio());
        Written.number(json, "smallest_margin_odds_ratio", limit.smallestMarginOddsRatio());
        json.writeBooleanField("consistent_is_reachable", limit.consistentIsReachable());
        whole(json, "particle_count_for_consistent", limit.particlesForConsistent());
        json.writeEndObject();
    }

    private static void whole(JsonGenerator json, String name, OptionalInt value) throws IOException {
        if (value.isPresent()) {
            json.writeNumberField(name, value.getAsInt());
        } else {
            json.writeNullField(name);
        }
    }
}
