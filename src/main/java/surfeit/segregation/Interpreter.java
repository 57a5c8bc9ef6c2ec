package surfeit.segregation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.NominalFractions;
import surfeit.composition.Phase;
import surfeit.element.Element;
import surfeit.rival.Rival;
import surfeit.rival.Rivals;
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
    /** Keeps the physics of alloys seen, bounded, for every answer of the program: results of pure calculations only. */
    private static final Rivals RIVALS = new Rivals();
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
        return interpretation(nominal, by, SampleReading.of(sample, closedNominal(nominal, sample), phases, source, by,
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
        RivalSituations situations = new RivalSituations(nominal, preparation.handling(), reading);
        List<Contrast> contrasts =
            by == GroupBy.PARTICLE ? List.of() : Contrasts.of(analyses, settings.judgement());
        List<GroupFinding> findings = findings(situations, by);
        return new Interpretation(nominal, reading.nominal(), reading.spotCount(), reading.particleCount(),
            reading.sessionCount(), settings, findings, contrasts, caveats, preparation.cautions(),
            DepthReader.of(analyses, findings, reading.sample(), settings.judgement().alpha(), PROFILES),
            DiffractionCheck.of(reading.sample().diffractionPhases(), reading.phases(), findings));
    }

    /**
     * The nominal as closed atomic fractions, less the excluded elements and those it says there are none of: these are
     * foreign where they are found.
     *
     * @throws CompositionException where fewer than two elements are left, or one of them is all of it
     */
    static NominalFractions closedNominal(Nominal nominal, Sample sample) {
        NominalFractions stated = nominal.resolve();
        Set<Element> left = new TreeSet<>(sample.excludedElements());
        for (int i = 0; i < stated.size(); i++) {
            if (stated.high(i) == 0) {
                left.add(stated.elements().get(i));
            }
        }
        NominalFractions fractions = stated.without(left);
        if (fractions.size() < 2) {
            throw new CompositionException(CompositionException.Kind.TOO_FEW_ELEMENTS, String.format(Locale.ROOT,
                "The nominal less the excluded elements and those of 0 has %d element(s); at least two are needed.",
                fractions.size()));
        }
        return fractions.requireComparable();
    }

    private static List<GroupFinding> findings(RivalSituations situations, GroupBy by) {
        MethodSettings settings = situations.reading().settings();
        List<GroupAnalysis> analyses = situations.reading().analyses();
        PhaseReader phaseReader = new PhaseReader(analyses.size(), settings.judgement().alpha());
        VerdictRule rule = new VerdictRule(settings.judgement().alpha(), Math.log(settings.judgement().marginOddsRatio()));
        FindingBuilder builder = new FindingBuilder(rule, new NextSteps(rule.margin(), rule.alpha()));
        List<NominalTest[]> family = analyses.stream().map(GroupAnalysis::tests).toList();
        double[][] adjusted = Adjustment.holm(family);
        List<GroupAnalysis> withThese = analyses.stream().filter(analysis -> analysis.theseTests().isPresent()).toList();
        double[][] adjustedThese = Adjustment.holm(withThese.stream().map(a -> a.theseTests().orElseThrow()).toList());
        List<GroupFinding> findings = new ArrayList<>();
        for (int g = 0; g < analyses.size(); g++) {
            GroupAnalysis analysis = analyses.get(g);
            int these = withThese.indexOf(analysis);
            List<ElementFinding> elements = builder.build(analysis, adjusted[g],
                these < 0 ? Optional.empty() : Optional.of(adjustedThese[these]), family, g);
            findings.add(finding(analysis, elements, situations, rule, by, phaseReader));
        }
        return findings;
    }

    private static GroupFinding finding(GroupAnalysis analysis, List<ElementFinding> elements, RivalSituations situations,
                                        VerdictRule rule, GroupBy by, PhaseReader phaseReader) {
        Sample sample = situations.reading().sample();
        GroupData data = analysis.data();
        boolean flagged = elements.stream().map(finding -> finding.outcome().verdict())
            .anyMatch(verdict -> verdict == Verdict.ENRICHED || verdict == Verdict.DEPLETED);
        List<Element> nominal = new ArrayList<>(data.elements());
        nominal.addAll(data.notMeasured());
        nominal.addAll(sample.excludedElements());
        List<ForeignElement> foreign = ForeignElements.of(data.foreign(), nominal, situations.reading().settings());
        Optional<PhaseReading> phaseReading =
            phaseReader.read(analysis, ForeignElements.muchBeyondUsual(foreign, ForeignElements.usual(sample)));
        List<Rival> rivals = RIVALS.of(situations.of(analysis, elements, by));
        Optional<List<Element>> explanation = ExplanationSet.of(analysis.units(), analysis.comparison(), flagged, rule);
        return new GroupFinding(by, data.name(), data.facts().spots(),
            analysis.particles().first().particles().stream().map(ParticleSums::name).toList(), data.beamEnergyKev(),
            List.copyOf(data.facts().sessions()), analysis.scope(), analysis.units().first().particleCount() == 2, elements,
            data.notMeasured(), explanation, ElementRatios.of(analysis, explanation),
            JointTest.of(analysis.units(), analysis.comparison().nominal()), foreign,
            analysis.reference(), rivals, GroupCaveats.of(analysis, elements, foreign, sample, rule, phaseReading),
            phaseReading, SkinBalance.of(analysis, elements, sample));
    }
}
