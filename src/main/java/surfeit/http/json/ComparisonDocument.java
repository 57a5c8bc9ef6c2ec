package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;
import surfeit.lab.ComparedRecord;
import surfeit.lab.StoredSample;
import surfeit.report.ComparisonWords;
import surfeit.report.Signs;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.contrast.ComparisonAnswer;
import surfeit.segregation.contrast.FeatureComparison;

/** Writes two samples against each other, feature by feature; "higher" means higher in the first. */
public final class ComparisonDocument {
    private ComparisonDocument() {
    }

    public static void write(JsonGenerator json, ComparedRecord compared, Instant computed, String programVersion)
        throws IOException {
        ComparisonAnswer answer = compared.answer();
        ComparisonWords words = new ComparisonWords(answer, Signs.UNICODE);
        json.writeStartObject();
        writeSample(json, "a", compared.a());
        writeSample(json, "b", compared.b());
        json.writeStringField("computed_time", computed.toString());
        json.writeStringField("program_version", programVersion);
        json.writeObjectFieldStart("method");
        json.writeStringField("name", MethodSettings.NAME);
        json.writeNumberField("version", MethodSettings.VERSION);
        json.writeNumberField("margin_odds_ratio", answer.marginOddsRatio());
        json.writeNumberField("alpha", answer.alpha());
        Written.percent(json, "detection_limit_mass_percent", answer.detectionLimitMassFraction());
        json.writeEndObject();
        json.writeStringField("by", answer.by().word());
        json.writeBooleanField("same_particles", answer.sameParticles());
        Written.symbols(json, "elements", answer.elements());
        Written.symbols(json, "elements_only_in_a", answer.onlyInA());
        Written.symbols(json, "elements_only_in_b", answer.onlyInB());
        json.writeArrayFieldStart("features");
        for (FeatureComparison feature : answer.features()) {
            write(json, feature, words);
        }
        json.writeEndArray();
        Written.texts(json, "summary", words.summary());
        GroupWriter.writeCaveats(json, answer.caveats());
        json.writeEndObject();
    }

    private static void writeSample(JsonGenerator json, String key, StoredSample stored) throws IOException {
        json.writeObjectFieldStart(key);
        json.writeStringField("sample", stored.name());
        json.writeNumberField("revision", stored.revision());
        json.writeEndObject();
    }

    private static void write(JsonGenerator json, FeatureComparison feature, ComparisonWords words) throws IOException {
        json.writeStartObject();
        json.writeStringField("feature", feature.feature());
        json.writeStringField("state", feature.state().word());
        json.writeStringField("sentence", words.sentence(feature));
        json.writeFieldName("contrast");
        if (feature.contrast().isPresent()) {
            ContrastWriter.write(json, feature.contrast().get(), words.sentence(feature));
        } else {
            json.writeNull();
        }
        if (feature.explanationSet().isPresent()) {
            Written.symbols(json, "explanation_set", feature.explanationSet().get());
        } else {
            json.writeNullField("explanation_set");
        }
        writeGroup(json, "a", feature.a());
        writeGroup(json, "b", feature.b());
        writePresence(json, "seen_in_a", feature.seenInA());
        writePresence(json, "seen_in_b", feature.seenInB());
        Written.symbols(json, "foreign_only_in_a", feature.foreignOnlyInA().stream().map(found -> found.element()).toList());
        Written.symbols(json, "foreign_only_in_b", feature.foreignOnlyInB().stream().map(found -> found.element()).toList());
        Written.text(json, "next_step", feature.nextStep());
        json.writeEndObject();
    }

    private static void writeGroup(JsonGenerator json, String key, Optional<GroupFinding> group) throws IOException {
        json.writeFieldName(key);
        if (group.isPresent()) {
            GroupWriter.write(json, group.get());
        } else {
            json.writeNull();
        }
    }

    private static void writePresence(JsonGenerator json, String key, Optional<FeatureComparison.Presence> presence)
        throws IOException {
        if (presence.isEmpty()) {
            json.writeNullField(key);
            return;
        }
        json.writeObjectFieldStart(key);
        json.writeNumberField("particle_count", presence.get().particles());
        json.writeNumberField("of_particle_count", presence.get().of());
        Written.percent(json, "share_percent_low", presence.get().shareLow());
        Written.percent(json, "share_percent_high", presence.get().shareHigh());
        json.writeEndObject();
    }
}
