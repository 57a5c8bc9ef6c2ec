package surfeit.segregation.nominal;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import surfeit.composition.CompositionException;
import surfeit.composition.NominalFractions;
import surfeit.composition.Phase;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.blocks.Grouping;
import surfeit.segregation.blocks.SpotSource;
import surfeit.segregation.sums.GroupData;
import surfeit.segregation.sums.References;
import surfeit.segregation.sums.SpotInHand;
import surfeit.spot.Sample;

/**
 * The spots of one sample put into groups and tested group by group, before the adjustment over the whole answer.
 *
 * @param nominal  the elements closed over, with their limits
 * @param analyses the groups that could be tested, in the order of first appearance
 * @param names    the lab's words for all groups, also for those that could not be tested
 * @param caveats  what could not be tested, and why
 * @param phases   known phases of the alloy, if groups are to be read against any
 */
public record SampleReading(Sample sample, NominalFractions nominal, MethodSettings settings, List<GroupAnalysis> analyses,
                            Set<String> names, List<Caveat> caveats, long spotCount, int particleCount, int sessionCount,
                            List<Phase> phases) {

    /** @throws CompositionException where there are spots but none of them lists two elements of the nominal */
    public static SampleReading of(Sample sample, NominalFractions nominal, SpotSource source, GroupBy by,
                                   double detectionLimitMassFraction) {
        return of(sample, nominal, List.of(), source, by, detectionLimitMassFraction);
    }

    /** @throws CompositionException where there are spots but none of them lists two elements of the nominal */
    public static SampleReading of(Sample sample, NominalFractions nominal, List<Phase> phases, SpotSource source,
                                   GroupBy by, double detectionLimitMassFraction) {
        MethodSettings settings =
            MethodSettings.of(sample.judgement(), sample.accuracyClass(), detectionLimitMassFraction);
        References references =
            new References(source.references(), sample, settings.floorMassFraction(), detectionLimitMassFraction);
        Grouping grouping = new Grouping(new SpotInHand(sample, nominal, detectionLimitMassFraction, phases), by, references,
            source);
        List<GroupData> groups = grouping.read(source);
        List<GroupAnalysis> analyses = new ArrayList<>();
        List<Caveat> caveats = new ArrayList<>();
        for (GroupData group : groups) {
            if (group.elements().size() < 2 || group.units().runs().isEmpty()) {
                caveats.add(Caveat.warning("too-few-elements", "Group \"" + group.name()
                    + "\" has no spot with two elements of the nominal; there is nothing to compare."));
            } else {
                analyses.add(GroupAnalysis.of(group, nominal, settings));
            }
        }
        if (analyses.isEmpty() && !groups.isEmpty()) {
            throw new CompositionException(CompositionException.Kind.TOO_FEW_ELEMENTS,
                "No group has spots that list at least two elements of the nominal (" + nominal.elements() + ").");
        }
        return new SampleReading(sample, nominal, settings, List.copyOf(analyses),
            groups.stream().map(GroupData::baseName).collect(Collectors.toSet()), List.copyOf(caveats),
            grouping.blocks().spotCount(), grouping.blocks().particleCount(), grouping.blocks().sessionCount(),
            List.copyOf(phases));
    }
}
