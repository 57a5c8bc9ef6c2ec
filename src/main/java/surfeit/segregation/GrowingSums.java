package surfeit.segregation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.Phase;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/**
 * Sums of a sample's spots, for several ways of grouping at once, that grow with each spot that comes. Not thread-safe:
 * one thread at a time.
 */
public final class GrowingSums {
    private final Map<GroupBy, Grouping> all;
    private final List<Grouping> groupings;

    private GrowingSums(Map<GroupBy, Grouping> all) {
        this.all = all;
        this.groupings = List.copyOf(all.values());
    }

    /**
     * Sums up what a source holds so far, going on from sums kept of it where they fit.
     *
     * @param mostParticles per way of grouping, particles up to which sums are kept: they bound the memory this takes
     * @throws CompositionException where the nominal cannot be compared with
     */
    public static GrowingSums of(Sample sample, Nominal nominal, List<Phase> phases, SpotSource soFar,
                                 Map<GroupBy, Integer> mostParticles, double detectionLimitMassFraction) {
        MethodSettings settings =
            MethodSettings.of(sample.judgement(), sample.accuracyClass(), detectionLimitMassFraction);
        References references = new References(soFar.references(), sample, settings.floorMassFraction(),
            detectionLimitMassFraction);
        SpotInHand hand = new SpotInHand(sample, Interpreter.closedNominal(nominal, sample),
            detectionLimitMassFraction, phases);
        Map<GroupBy, Grouping> all = new EnumMap<>(GroupBy.class);
        mostParticles.keySet().forEach(by -> all.put(by, new Grouping(hand, by, references)));
        read(soFar, all, mostParticles);
        return new GrowingSums(all);
    }

    /** Reads every spot once for all that begin at the same one. */
    private static void read(SpotSource source, Map<GroupBy, Grouping> all, Map<GroupBy, Integer> mostParticles) {
        List<Grouping> fromFirst = new ArrayList<>();
        Map<Long, List<Grouping>> later = new TreeMap<>();
        Map<Long, KeptSums> sums = new TreeMap<>();
        all.forEach((by, grouping) -> grouping.start(source, mostParticles.get(by)).ifPresentOrElse(kept -> {
            later.computeIfAbsent(kept.mark(), mark -> new ArrayList<>()).add(grouping);
            sums.put(kept.mark(), kept);
        }, () -> fromFirst.add(grouping)));
        if (!fromFirst.isEmpty()) {
            source.forEachSpecimen(spot -> add(fromFirst, spot));
        }
        later.forEach((mark, groupings) -> sums.get(mark).forEachLater(spot -> add(groupings, spot)));
    }

    /** Adds the next spot of the specimen. */
    public void add(Spot spot) {
        add(groupings, spot);
    }

    private static void add(List<Grouping> groupings, Spot spot) {
        for (int i = 0; i < groupings.size(); i++) {
            groupings.get(i).add(spot);
        }
    }

    /**
     * The sums of all spots; groups of which a later spot showed what the first did not are read again.
     *
     * @param source what the sums began with, and every spot added since, reference spots as they were
     * @return without a way of grouping that has more particles than were to be kept
     */
    public Map<GroupBy, SampleSums> finish(SpotSource source) {
        Map<GroupBy, SampleSums> sums = new EnumMap<>(GroupBy.class);
        all.forEach((by, grouping) -> {
            grouping.finish(source);
            if (!grouping.isOverfull()) {
                sums.put(by, new SampleSums(grouping));
            }
        });
        return sums;
    }
}
