package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import surfeit.composition.Basis;
import surfeit.composition.Closure;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.element.ElementTable;
import surfeit.lab.Segregation;
import surfeit.lab.StoredAlloy;
import surfeit.report.Confidence;
import surfeit.report.PlainWords;
import surfeit.report.Signs;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.MethodSettings;

/**
 * Writes the whole answer. What differs between two askings of the same data (sample, revision, time) stands before the
 * groups; from {@code method} on, the same data give the same bytes.
 */
public final class InterpretationDocument {
    /** A rectangular distribution of half width T has the standard uncertainty T over the root of 3. */
    private static final double ROOT_OF_3 = Math.sqrt(3);

    private InterpretationDocument() {
    }

    public static void write(JsonGenerator json, Segregation answer, Instant computed, String programVersion)
            throws IOException {
        Interpretation interpretation = answer.interpretation();
        json.writeStartObject();
        writeHead(json, answer, computed, programVersion);
        writeMethod(json, interpretation.settings());
        json.writeObjectFieldStart("reference_tables");
        json.writeStringField("atomic_weights", ReferenceTables.atomicWeights(ElementTable.standard()));
        json.writeEndObject();
        writeNominal(json, answer);
        json.writeNumberField("spot_count", interpretation.spotCount());
        json.writeNumberField("particle_count", interpretation.particleCount());
        json.writeNumberField("session_count", interpretation.sessionCount());
        PlainWords words = new PlainWords(interpretation, Signs.UNICODE);
        json.writeArrayFieldStart("groups");
        for (GroupFinding group : interpretation.groups()) {
            GroupWriter.write(json, group);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("contrasts");
        for (Contrast contrast : interpretation.contrasts()) {
            ContrastWriter.write(json, contrast, words.contrast(contrast));
        }
        json.writeEndArray();
        PhaseWriter.writeKnown(json, interpretation.knownPhases());
        DepthWriter.write(json, interpretation.depths());
        PhaseWriter.writeDiffraction(json, interpretation.diffraction());
        Written.texts(json, "summary", words.summary());
        GroupWriter.writeCaveats(json, interpretation.caveats());
        Written.texts(json, "cautions", interpretation.cautions());
        json.writeEndObject();
    }

    private static void writeHead(JsonGenerator json, Segregation answer, Instant computed, String programVersion)
            throws IOException {
        if (answer.stored().isPresent()) {
            json.writeStringField("sample", answer.stored().get().name());
            json.writeNumberField("revision", answer.stored().get().revision());
        } else {
            json.writeNullField("sample");
            json.writeNullField("revision");
        }
        json.writeStringField("computed_time", computed.toString());
        json.writeStringField("program_version", programVersion);
    }

    private static void writeMethod(JsonGenerator json, MethodSettings settings) throws IOException {
        json.writeObjectFieldStart("method");
        json.writeStringField("name", MethodSettings.NAME);
        json.writeNumberField("version", MethodSettings.VERSION);
        json.writeStringField("confidence_means", Confidence.MEANING);
        json.writeObjectFieldStart("settings");
        SampleWriter.writeJudgement(json, settings.judgement());
        json.writeStringField("accuracy_class", settings.accuracy().words());
        json.writeNumberField("relative_calibration_u", settings.accuracy().relativeUncertainty());
        Written.percent(json, "floor_mass_percent", settings.floorMassFraction());
        Written.percent(json, "detection_limit_mass_percent", settings.detectionLimitMassFraction());
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void writeNominal(JsonGenerator json, Segregation answer) throws IOException {
        Interpretation interpretation = answer.interpretation();
        Optional<StoredAlloy> alloy = answer.alloy();
        json.writeObjectFieldStart("nominal");
        Written.text(json, "alloy", alloy.map(stored -> stored.alloy().id()));
        json.writeFieldName("alloy_revision");
        if (alloy.isPresent()) {
            json.writeNumber(alloy.get().revision());
        } else {
            json.writeNull();
        }
        Written.text(json, "source", alloy.map(stored -> stored.alloy().source()));
        json.writeStringField("unit", interpretation.nominal().basis().unit());
        Written.percent(json, "stated_sum_percent", interpretation.nominal().statedSum());
        Written.symbols(json, "excluded_elements", answer.sample().excludedElements());
        writeFractions(json, interpretation.nominalFractions());
        json.writeEndObject();
    }

    private static void writeFractions(JsonGenerator json, NominalFractions fractions) throws IOException {
        double[] mass = Closure.close(fractions.middles(),
            Closure.divisors(fractions.elements(), Basis.ATOMIC, Basis.MASS));
        json.writeArrayFieldStart("elements");
        List<Element> elements = fractions.elements();
        for (int i = 0; i < elements.size(); i++) {
            boolean point = fractions.isPoint(i);
            json.writeStartObject();
            json.writeStringField("element", elements.get(i).symbol());
            Written.percent(json, "atomic_percent", fractions.middle(i));
            Written.percent(json, "mass_percent", mass[i]);
            Written.percent(json, "from_atomic_percent", point ? Double.NaN : fractions.low(i));
            Written.percent(json, "to_atomic_percent", point ? Double.NaN : fractions.high(i));
            Written.percent(json, "atomic_percent_u", fractions.standardUncertainty(i));
            Written.percent(json, "tolerance_atomic_percent", fractions.standardUncertainty(i) * ROOT_OF_3);
            json.writeBooleanField("derived", fractions.isDerived(i));
            json.writeEndObject();
        }
        json.writeEndArray();
    }
}
