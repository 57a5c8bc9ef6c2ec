package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import surfeit.element.Element;
import surfeit.rival.Rival;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.ElementRatios;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.ReferenceUse;
import surfeit.statistics.HotellingT2;

/** Writes what one group of spots shows. */
final class GroupWriter {
    private GroupWriter() {
    }

    static void write(JsonGenerator json, GroupFinding group) throws IOException {
        json.writeStartObject();
        json.writeStringField("by", group.by().word());
        json.writeStringField("group", group.name());
        json.writeNumberField("spot_count", group.spotCount());
        json.writeNumberField("particle_count", group.particles().size());
        Written.texts(json, "particles", group.particles());
        Written.number(json, "beam_energy_kev", group.beamEnergyKev());
        Written.texts(json, "sessions", group.sessions());
        json.writeStringField("scope", group.scope().word());
        json.writeBooleanField("weak_two_particles", group.weakTwoParticles());
        json.writeArrayFieldStart("elements");
        for (ElementFinding finding : group.elements()) {
            FindingWriter.write(json, finding);
        }
        json.writeEndArray();
        Written.symbols(json, "not_measured", group.notMeasured());
        if (group.explanationSet().isPresent()) {
            Written.symbols(json, "explanation_set", group.explanationSet().get());
        } else {
            json.writeNullField("explanation_set");
        }
        writeRatios(json, group);
        writeJointTest(json, group);
        json.writeArrayFieldStart("foreign_elements");
        for (ForeignElement foreign : group.foreign()) {
            write(json, foreign);
        }
        json.writeEndArray();
        writeReference(json, group);
        PhaseWriter.write(json, "phase_reading", group.phaseReading());
        DepthWriter.write(json, "skin_limit", group.skinLimit());
        json.writeArrayFieldStart("rival_explanations");
        for (Rival rival : group.rivals()) {
            write(json, rival);
        }
        json.writeEndArray();
        writeCaveats(json, group.caveats());
        json.writeEndObject();
    }

    private static void writeRatios(JsonGenerator json, GroupFinding group) throws IOException {
        json.writeFieldName("ratios");
        if (group.ratios().isEmpty()) {
            json.writeNull();
            return;
        }
        json.writeStartObject();
        json.writeStringField("to", group.ratios().get().to().symbol());
        json.writeArrayFieldStart("elements");
        for (ElementRatios.Ratio ratio : group.ratios().get().ratios()) {
            json.writeStartObject();
            json.writeStringField("element", ratio.element().symbol());
            FindingWriter.estimate(json, EstimateNames.FACTOR, Optional.of(ratio.factor()));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void writeJointTest(JsonGenerator json, GroupFinding group) throws IOException {
        json.writeFieldName("joint_test");
        if (group.jointTest().isEmpty()) {
            json.writeNull();
            return;
        }
        HotellingT2 test = group.jointTest().get().test();
        json.writeStartObject();
        json.writeStringField("error_included", "scatter of particles only");
        Written.number(json, "t2", test.t2());
        Written.number(json, "f", test.f());
        json.writeNumberField("degrees_of_freedom_numerator", test.quantities());
        json.writeNumberField("degrees_of_freedom_denominator", test.observations() - test.quantities());
        Written.number(json, "p_value", test.pValue());
        json.writeBooleanField("below_limit_replaced", group.jointTest().get().replaced());
        json.writeEndObject();
    }

    static void writeCaveats(JsonGenerator json, List<Caveat> caveats) throws IOException {
        json.writeArrayFieldStart("caveats");
        for (Caveat caveat : caveats) {
            json.writeStartObject();
            json.writeStringField("code", caveat.code());
            json.writeStringField("weight", caveat.weight().name().toLowerCase(Locale.ROOT));
            json.writeStringField("detail", caveat.detail());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void write(JsonGenerator json, ForeignElement foreign) throws IOException {
        json.writeStartObject();
        json.writeStringField("element", foreign.element().symbol());
        json.writeBooleanField("present", foreign.present());
        Written.percent(json, "mean_atomic_percent", foreign.mean());
        Written.percent(json, "mean_atomic_percent_low", foreign.low());
        Written.percent(json, "mean_atomic_percent_high", foreign.high());
        Written.percent(json, "detection_limit_atomic_percent", foreign.detectionLimit());
        json.writeBooleanField("detection_limit_assumed", foreign.limitAssumed());
        json.writeNumberField("spot_count", foreign.spotCount());
        json.writeEndObject();
    }

    private static void write(JsonGenerator json, Rival rival) throws IOException {
        json.writeStartObject();
        json.writeStringField("code", rival.code().code());
        json.writeStringField("cause", rival.cause());
        Written.text(json, "element", rival.element().map(Element::symbol));
        json.writeStringField("could_explain", rival.couldExplain().word());
        Written.number(json, "largest_factor", rival.largestFactor());
        json.writeStringField("assumes", rival.assumes());
        json.writeStringField("how_to_rule_out", rival.howToRuleOut());
        Written.texts(json, "needs", rival.needs());
        json.writeStringField("source", rival.source());
        json.writeEndObject();
    }

    private static void writeReference(JsonGenerator json, GroupFinding group) throws IOException {
        json.writeFieldName("reference");
        if (group.reference().isEmpty()) {
            json.writeNull();
            return;
        }
        ReferenceUse use = group.reference().get();
        json.writeStartObject();
        json.writeBooleanField("used", use.used());
        json.writeStringField("explanation", use.explanation());
        json.writeNumberField("spot_count", use.spotCount());
        json.writeNumberField("correlation", use.correlation());
        json.writeArrayFieldStart("corrections");
        for (ReferenceUse.Correction correction : use.corrections()) {
            json.writeStartObject();
            json.writeStringField("element", correction.element().symbol());
            json.writeBooleanField("usable", correction.usable());
            Written.number(json, "factor", correction.factor());
            Written.number(json, "log_odds_u_shared_before", correction.sharedUncertaintyBefore());
            Written.number(json, "log_odds_u_shared_after", correction.sharedUncertaintyAfter());
            Written.number(json, "log_odds_u_random_added", correction.randomUncertaintyAdded());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
