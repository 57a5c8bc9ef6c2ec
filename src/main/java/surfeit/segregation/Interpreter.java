package surfeit.segregation;

import java.util.ArrayList;
import java.util.List;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.Phase;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.blocks.SpotSource;
import surfeit.segregation.contrast.Contrasts;
import surfeit.segregation.depth.DepthReader;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.nominal.SampleReading;
import surfeit.segregation.phase.DiffractionCheck;
import surfeit.segregation.sums.ClosedNominal;
import surfeit.segregation.verdict.GroupFindings;
import surfeit.spot.Sample;
import surfeit.xray.ProfileCache;

/**
 * Interprets the spots of a sample against its nominal composition.
 *
 * <p>Every spot is closed to the nominal's elements; spots are put together per particle, particles per group; each
 * group mean is tested against nominal on the logit scale with the scatter of particles and the calibration error all
 * spots share; p values are adjusted over the whole answer. Spots of one particle are not independent and are never
 * pooled over particles; fractions of one spot are not independent either, so a binary is one test. Blind to what all
 * spots share beside calibration: tilt, films, overlap; these are weighed as other causes. Thread-safe.
 */
public final class Interpreter {
    /** Keeps profiles seen, bounded, for every answer of the program: results of pure calculations only. */
    private static final ProfileCache PROFILES = new ProfileCache();
    private static final Preparations PREPARATIONS = new Preparations();

    /**
     * The answer for a sample.
     *
     * @param sample  how it was made and measured, and how it is to be judged
     * @param nominal the composition to compare with: the sample's own, or its alloy's
     * @param source  its spots
     * @param by      how to put them into groups
     * @param detectionLimitMassFraction limit taken for "not detected" without a stated limit
     * @throws CompositionException where fewer than two elements are left to compare
     */
    public Interpretation interpret(Sample sample, Nominal nominal, SpotSource source, GroupBy by,
                                    double detectionLimitMassFraction) {
        return interpret(sample, nominal, List.of(), source, by, detectionLimitMassFraction);
    }

    /**
     * The same, with every group read against the phases of the alloy too.
     *
     * @param phases its phases: handbook ones ({@link surfeit.composition.Alloy#phases}) and any the lab added
     */
    public Interpretation interpret(Sample sample, Nominal nominal, List<Phase> phases, SpotSource source, GroupBy by,
                                    double detectionLimitMassFraction) {
        return interpretation(nominal, by, SampleReading.of(sample, ClosedNominal.of(nominal, sample), phases, source, by,
            detectionLimitMassFraction));
    }

    /** The answer for spots that were read already. */
    static Interpretation interpretation(Nominal nominal, GroupBy by, SampleReading reading) {
        List<GroupAnalysis> analyses = reading.analyses();
        MethodSettings settings = reading.settings();
        List<Caveat> caveats = new ArrayList<>(reading.caveats());
        caveats.addAll(SampleCaveats.of(nominal, analyses, reading.sessionCount(), settings));
        Preparations.Preparation preparation = PREPARATIONS.of(reading.sample(), nominal.elements());
        caveats.addAll(preparation.unknownWords());
        List<Contrast> contrasts =
            by == GroupBy.PARTICLE ? List.of() : Contrasts.of(analyses, settings.judgement());
        List<GroupFinding> findings = GroupFindings.of(reading, nominal, preparation.handling(), by);
        return new Interpretation(nominal, reading.nominal(), reading.spotCount(), reading.particleCount(),
            reading.sessionCount(), settings, findings, contrasts, caveats, preparation.cautions(),
            DepthReader.of(analyses, findings, reading.sample(), settings.judgement().alpha(), PROFILES),
            DiffractionCheck.of(reading.sample().diffractionPhases(), reading.phases(), findings));
    }
}
