package surfeit.segregation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.rival.Rival;
import surfeit.rival.Rivals;
import surfeit.spot.Sample;

/**
 * Interprets the spots of a sample against its nominal composition.
 *
 * <p>Every spot is closed to the nominal's elements; spots are put together per particle, particles per group; each
 * group mean is tested against nominal on the logit scale with the scatter of particles and the calibration error all
 * spots share; p values are adjusted over the whole answer. Spots of one particle are not independent and are never
 * pooled over particles; fractions of one spot are not independent either, so a binary is one test. Blind to what all
 * spots share beside calibration: tilt, films, overlap; these are weighed as other causes. Keeps only results of pure
 * calculations (physics of alloys seen, words of preparations), bounded; thread-safe.
 */
public final class Interpreter {
    private final Rivals rivals = new Rivals();
    private final Preparations preparations = new Preparations();

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
        MethodSettings settings = MethodSettings.of(sample.judgement(), sample.accuracyClass(), detectionLimitMassFraction);
        NominalFractions fractions = closedNominal(nominal, sample);
        References references = new References(source.references(), sample, settings.floorMassFraction(), detectionLimitMassFraction);
        Grouping grouping = new Grouping(sample, fractions, by, detectionLimitMassFraction, references);
        List<GroupData> groups = grouping.read(source);
        List<GroupAnalysis> analyses = new ArrayList<>();
        List<Caveat> caveats = new ArrayList<>();
        for (GroupData group : groups) {
            if (group.elements().size() < 2 || group.units().runs().isEmpty()) {
                caveats.add(Caveat.warning("too-few-elements", "Group \"" + group.name()
                    + "\" has no spot with two elements of the nominal; there is nothing to compare."));
            } else {
                analyses.add(GroupAnalysis.of(group, fractions, settings));
            }
        }
        if (analyses.isEmpty() && !groups.isEmpty()) {
            throw new CompositionException(CompositionException.Kind.TOO_FEW_ELEMENTS,
                "No group has spots that list at least two elements of the nominal (" + nominal.elements() + ").");
        }
        Preparations.Preparation preparation = preparations.of(sample, nominal.elements());
        List<GroupFinding> findings = findings(analyses,
            new RivalSituations(sample, nominal, preparation.handling(), settings, analyses), by);
        caveats.addAll(SampleCaveats.of(nominal, analyses, grouping.sessionCount(), settings));
        caveats.addAll(preparation.unknownWords());
        return new Interpretation(nominal, fractions, grouping.spotCount(), grouping.particleCount(),
            grouping.sessionCount(), settings, findings, by == GroupBy.PARTICLE ? List.of() : Contrasts.of(analyses, settings), caveats,
            preparation.cautions());
    }

    private static NominalFractions closedNominal(Nominal nominal, Sample sample) {
        NominalFractions fractions = nominal.resolve().without(sample.excludedElements());
        if (fractions.size() < 2) {
            throw new CompositionException(CompositionException.Kind.TOO_FEW_ELEMENTS, String.format(Locale.ROOT,
                "The nominal less the excluded elements has %d element(s); at least two are needed to compare.", fractions.size()));
        }
        return fractions;
    }

    private List<GroupFinding> findings(List<GroupAnalysis> analyses, RivalSituations situations, GroupBy by) {
        MethodSettings settings = situations.settings();
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
            findings.add(finding(analysis, elements, situations, rule, by));
        }
        return findings;
    }

    private GroupFinding finding(GroupAnalysis analysis, List<ElementFinding> elements, RivalSituations situations,
                                 VerdictRule rule, GroupBy by) {
        Sample sample = situations.sample();
        GroupData data = analysis.data();
        boolean flagged = elements.stream().map(finding -> finding.outcome().verdict())
            .anyMatch(verdict -> verdict == Verdict.ENRICHED || verdict == Verdict.DEPLETED);
        List<Element> nominal = new ArrayList<>(data.elements());
        nominal.addAll(data.notMeasured());
        nominal.addAll(sample.excludedElements());
        List<ForeignElement> foreign = ForeignElements.of(data.foreign(), nominal, situations.settings());
        List<Rival> other = rivals.of(situations.of(analysis, elements, by));
        return new GroupFinding(by, data.name(), data.facts().spots(),
            analysis.particles().first().particles().stream().map(ParticleSums::name).toList(), data.beamEnergyKev(),
            List.copyOf(data.facts().sessions()), analysis.scope(), analysis.units().first().particleCount() == 2, elements,
            data.notMeasured(), ExplanationSet.of(analysis.units(), analysis.comparison(), flagged, rule), foreign,
            analysis.reference(), other, GroupCaveats.of(analysis, elements, foreign, sample, rule));
    }
}
