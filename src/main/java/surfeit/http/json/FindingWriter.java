package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Optional;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Verdict;

/** Writes what one group shows of one element: the verdict and every number that entered it. */
final class FindingWriter {
    private static final Estimate NONE = new Estimate(Double.NaN, Double.NaN, Double.NaN);
    private static final double LN_2 = Math.log(2);

    private FindingWriter() {
    }

    static void write(JsonGenerator json, ElementFinding finding) throws IOException {
        json.writeStartObject();
        json.writeStringField("element", finding.element().symbol());
        json.writeStringField("verdict", finding.outcome().verdict().word());
        writeNominal(json, finding);
        writeOutcome(json, finding.outcome());
        Written.percent(json, "mean_mass_percent", finding.meanMassFraction());
        json.writeBooleanField("fragile", finding.isFragile());
        Written.texts(json, "fragile_without", finding.fragileWithout());
        Written.text(json, "seen_on_particles", finding.seenOn().map(seen -> seen.particles() + " of " + seen.of()));
        json.writeNumberField("below_limit_count", finding.belowLimitCount());
        Written.percent(json, "detection_limit_atomic_percent", finding.detectionLimit());
        json.writeBooleanField("detection_limit_assumed", finding.limitAssumed());
        Written.text(json, "next_step", finding.nextStep());
        json.writeFieldName("these_particles");
        if (finding.theseParticles().isPresent()) {
            json.writeStartObject();
            json.writeStringField("verdict", finding.theseParticles().get().verdict().word());
            writeOutcome(json, finding.theseParticles().get());
            json.writeEndObject();
        } else {
            json.writeNull();
        }
        json.writeEndObject();
    }

    private static void writeNominal(JsonGenerator json, ElementFinding finding) throws IOException {
        boolean point = finding.nominalLow() == finding.nominalHigh();
        Written.percent(json, "nominal_atomic_percent", (finding.nominalLow() + finding.nominalHigh()) / 2);
        Written.percent(json, "nominal_from_atomic_percent", point ? Double.NaN : finding.nominalLow());
        Written.percent(json, "nominal_to_atomic_percent", point ? Double.NaN : finding.nominalHigh());
        json.writeBooleanField("nominal_derived", finding.nominalDerived());
    }

    private static void writeOutcome(JsonGenerator json, Outcome outcome) throws IOException {
        writeEffect(json, outcome);
        Written.number(json, "p_value", outcome.pValue());
        Written.number(json, "p_value_adjusted", outcome.pAdjusted());
        json.writeStringField("adjustment", "holm");
        Written.number(json, "p_value_equivalence", outcome.pEquivalence());
        if (outcome.confidence().isPresent()) {
            Written.number(json, "confidence", outcome.confidence());
        }
        Written.number(json, "not_more_than_factor", outcome.notMoreThanFactor());
        json.writeBooleanField("beyond_margin", outcome.beyondMargin());
        json.writeBooleanField("small_shift_detected", outcome.smallShiftDetected());
        json.writeBooleanField("spots_agree_on_shift", outcome.spotsAgreeOnShift());
        Written.text(json, "reason", outcome.reason().map(Reason::word));
        Written.text(json, "lean", outcome.lean().map(Verdict::word));
        json.writeStringField("scale", outcome.scale());
        json.writeStringField("random_uncertainty", outcome.randomUncertainty());
    }

    private static void writeEffect(JsonGenerator json, Outcome outcome) throws IOException {
        Written.percent(json, "mean_atomic_percent", outcome.mean());
        Written.percent(json, "mean_atomic_percent_low", outcome.low());
        Written.percent(json, "mean_atomic_percent_high", outcome.high());
        Written.percent(json, "mean_atomic_percent_u", outcome.uncertainty());
        Written.percent(json, "mean_atomic_percent_u_random", outcome.uncertaintyRandom());
        Written.percent(json, "mean_atomic_percent_u_shared", outcome.uncertaintyShared());
        Written.number(json, "degrees_of_freedom", outcome.degreesOfFreedom());
        estimate(json, EstimateNames.ENRICHMENT_FACTOR, outcome.enrichmentFactor());
        estimate(json, EstimateNames.LOG2_ENRICHMENT_FACTOR, outcome.enrichmentFactor().map(FindingWriter::log2));
        Estimate difference = outcome.difference();
        estimate(json, EstimateNames.DIFFERENCE, Optional.of(new Estimate(
            Numbers.inPercent(difference.value()), Numbers.inPercent(difference.low()),
            Numbers.inPercent(difference.high()))));
        estimate(json, EstimateNames.ODDS_RATIO, outcome.oddsRatio());
    }

    /** Doublings against nominal: 1 is twice as much, -1 half as much. An end at zero has none. */
    private static Estimate log2(Estimate factor) {
        return new Estimate(Math.log(factor.value()) / LN_2, Math.log(factor.low()) / LN_2, Math.log(factor.high()) / LN_2);
    }

    /** A value and the ends of its interval, under three names. */
    static void estimate(JsonGenerator json, EstimateNames names, Optional<Estimate> estimate) throws IOException {
        Estimate written = estimate.orElse(NONE);
        Written.number(json, names.value(), written.value());
        Written.number(json, names.low(), written.low());
        Written.number(json, names.high(), written.high());
    }
}
