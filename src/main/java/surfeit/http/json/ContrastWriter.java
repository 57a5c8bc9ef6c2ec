package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Optional;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.Reason;

/** Writes one group against another. */
final class ContrastWriter {
    private ContrastWriter() {
    }

    /** @param sentence the contrast in words */
    static void write(JsonGenerator json, Contrast contrast, String sentence) throws IOException {
        json.writeStartObject();
        json.writeStringField("group_a", contrast.groupA());
        json.writeStringField("group_b", contrast.groupB());
        json.writeBooleanField("paired", contrast.paired());
        Written.texts(json, "common_particles", contrast.commonParticles());
        Written.texts(json, "left_out_particles", contrast.leftOut());
        json.writeStringField("scope", contrast.scope().word());
        json.writeNumberField("correlation", contrast.correlation());
        Written.text(json, "note", contrast.note());
        json.writeStringField("sentence", sentence);
        json.writeArrayFieldStart("elements");
        for (Contrast.ElementContrast element : contrast.elements()) {
            write(json, element);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void write(JsonGenerator json, Contrast.ElementContrast element) throws IOException {
        json.writeStartObject();
        json.writeStringField("element", element.element().symbol());
        json.writeStringField("verdict", element.verdict().word());
        Written.percent(json, "mean_a_atomic_percent", element.meanA());
        Written.percent(json, "mean_b_atomic_percent", element.meanB());
        Estimate difference = element.difference();
        FindingWriter.estimate(json, EstimateNames.DIFFERENCE, Optional.of(new Estimate(
            Numbers.inPercent(difference.value()), Numbers.inPercent(difference.low()),
            Numbers.inPercent(difference.high()))));
        FindingWriter.estimate(json, EstimateNames.ODDS_RATIO, element.oddsRatio());
        Written.number(json, "p_value", element.pValue());
        Written.number(json, "p_value_adjusted", element.pAdjusted());
        Written.number(json, "p_value_equivalence", element.pEquivalence());
        if (element.confidence().isPresent()) {
            Written.number(json, "confidence", element.confidence());
        }
        Written.number(json, "u_random", element.uncertaintyRandom());
        Written.number(json, "u_shared", element.uncertaintyShared());
        Written.number(json, "degrees_of_freedom", element.degreesOfFreedom());
        Written.text(json, "reason", element.reason().map(Reason::word));
        json.writeStringField("scale", element.scale());
        json.writeEndObject();
    }
}
