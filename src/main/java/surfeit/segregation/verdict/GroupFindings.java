package surfeit.segregation.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.composition.Nominal;
import surfeit.element.Element;
import surfeit.preparation.Handling;
import surfeit.rival.Rival;
import surfeit.rival.Rivals;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.answer.PhaseReading;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.depth.SkinBalance;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.nominal.SampleReading;
import surfeit.segregation.phase.PhaseReader;
import surfeit.segregation.sums.GroupData;
import surfeit.segregation.uncertainty.ParticleSums;
import surfeit.spot.Sample;

/** What is said of each group of a sample: the verdicts of its elements, their other causes, and what to mind. */
public final class GroupFindings {
    /** Keeps the physics of alloys seen, bounded, for every answer of the program: results of pure calculations only. */
    private static final Rivals RIVALS = new Rivals();

    private GroupFindings() {
    }

    /** In the order of the reading; p values are adjusted over all of them. */
    public static List<GroupFinding> of(SampleReading reading, Nominal nominal, Handling handling, GroupBy by) {
        RivalSituations situations = new RivalSituations(nominal, handling, reading);
        MethodSettings settings = reading.settings();
        List<GroupAnalysis> analyses = reading.analyses();
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
            data.notMeasured(), explanation, RatioReader.of(analysis, explanation),
            JointCheck.of(analysis.units(), analysis.comparison().nominal()), foreign,
            analysis.reference(), rivals, GroupCaveats.of(analysis, elements, foreign, sample, rule, phaseReading),
            phaseReading, SkinBalance.of(analysis, elements, sample));
    }
}
