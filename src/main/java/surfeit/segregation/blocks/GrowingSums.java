package surfeit.segregation.blocks;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.Phase;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.sums.ClosedNominal;
import surfeit.segregation.sums.References;
import surfeit.segregation.sums.SpotInHand;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/**
 * Sums of a sample's spots, for several ways of grouping at once, that grow with each spot that comes. Not thread-safe:
 * one thread at a time.
 */
public final class GrowingSums implements SpotPlaces {
    private final Map<GroupBy, Grouping> all = new EnumMap<>(GroupBy.class);
    private final Map<GroupBy, BlockSums.Held> held = new EnumMap<>(GroupBy.class);
    private final List<SpotBlocks> blocks = new ArrayList<>();

    private GrowingSums(Inputs inputs, SpotSource source, Map<GroupBy, Integer> mostParticles) {
        References references = inputs.references(source);
        SpotInHand hand = inputs.hand();
        mostParticles.forEach((by, most) -> {
            held.put(by, new BlockSums.Held());
            all.put(by, new Grouping(hand, by, references, source, most, held.get(by)));
            blocks.add(all.get(by).blocks());
        });
    }

    /**
     * What spots are summed up by beside the way they are grouped.
     *
     * @param detectionLimitMassFraction limit taken for "not detected" without a stated one
     */
    public record Inputs(Sample sample, Nominal nominal, List<Phase> phases, double detectionLimitMassFraction) {
        References references(SpotSource source) {
            MethodSettings settings =
                MethodSettings.of(sample.judgement(), sample.accuracyClass(), detectionLimitMassFraction);
            return new References(source.references(), sample, settings.floorMassFraction(), detectionLimitMassFraction);
        }

        /** @throws CompositionException where the nominal cannot be compared with */
        SpotInHand hand() {
            return new SpotInHand(sample, ClosedNominal.of(nominal, sample), detectionLimitMassFraction, phases);
        }
    }

    /**
     * Sums up what a source holds so far, going on from sums kept of it where they fit.
     *
     * @param mostParticles per way of grouping, particles up to which sums are kept: they bound the memory this takes
     * @throws CompositionException where the nominal cannot be compared with
     */
    public static GrowingSums of(Inputs inputs, SpotSource soFar, Map<GroupBy, Integer> mostParticles) {
        GrowingSums sums = new GrowingSums(inputs, soFar, mostParticles);
        sums.all.values().forEach(grouping -> grouping.start(soFar));
        read(sums.all.values(), soFar);
        return sums;
    }

    /** Hands over what they lack, every spot once for all that begin at the same one. */
    private static void read(Collection<Grouping> some, SpotSource source) {
        List<SpotBlocks> fromFirst = new ArrayList<>();
        Map<Long, List<SpotBlocks>> later = new TreeMap<>();
        Map<Long, KeptSums> sums = new TreeMap<>();
        for (Grouping grouping : some) {
            if (grouping.rest() == Grouping.Rest.ALL) {
                fromFirst.add(grouping.blocks());
            } else if (grouping.rest() == Grouping.Rest.LATER) {
                KeptSums kept = grouping.kept().orElseThrow();
                later.computeIfAbsent(kept.mark(), mark -> new ArrayList<>()).add(grouping.blocks());
                sums.put(kept.mark(), kept);
            }
        }
        if (!fromFirst.isEmpty()) {
            source.forEachPlace((place, spot, counts) -> next(fromFirst, place, spot, counts));
        }
        later.forEach((mark, blocks) ->
            sums.get(mark).forEachLater((place, spot, counts) -> next(blocks, place, spot, counts)));
    }

    private static void finish(Collection<Grouping> some, SpotSource source) {
        read(some.stream().filter(grouping -> grouping.startAgain(source)).toList(), source);
    }

    /**
     * The sums of all spots, after one of them has changed: of its block and of those that came later every spot is read, of
     * the other blocks none. All spots are read where that is not enough: where blocks are not kept one by one, where the
     * spot's group lists another element, or has another sign, than before, or where a reference spot corrects otherwise.
     *
     * @param place the spot's place in the record
     * @return without a way of grouping that has more particles than were to be kept
     * @throws CompositionException where the nominal cannot be compared with
     */
    public static Map<GroupBy, SampleSums> changed(Inputs inputs, SpotSource source, Map<GroupBy, Integer> mostParticles,
                                                   long place) {
        GrowingSums sums = new GrowingSums(inputs, source, mostParticles);
        sums.all.values().forEach(grouping -> grouping.startChanged(source, place));
        read(sums.all.values(), source);
        return sums.finish(source);
    }

    @Override
    public void next(long place, Spot spot, boolean counts) {
        next(blocks, place, spot, counts);
    }

    private static void next(List<SpotBlocks> some, long place, Spot spot, boolean counts) {
        for (int i = 0; i < some.size(); i++) {
            some.get(i).next(place, spot, counts);
        }
    }

    /**
     * The sums of all spots; they are read again where a later spot of a group showed what the first did not.
     *
     * @param source what the sums began with, and every spot added since, reference spots as they were
     * @return without a way of grouping that has more particles than were to be kept
     */
    public Map<GroupBy, SampleSums> finish(SpotSource source) {
        finish(all.values(), source);
        return made();
    }

    private Map<GroupBy, SampleSums> made() {
        Map<GroupBy, SampleSums> made = new EnumMap<>(GroupBy.class);
        all.forEach((by, grouping) -> {
            if (!grouping.blocks().isOverfull()) {
                made.put(by, new SampleSums(grouping, held.get(by).blocks()));
            }
        });
        return made;
    }

    /** What a recount found: how many spots it read, and the sums beside those kept. */
    public record Recounted(long spotCount, SampleSums.Comparison comparison) {
    }

    /** Sums up every spot anew, and compares with what is kept, for several ways of grouping of the same spots. */
    public static Map<GroupBy, Recounted> recount(Inputs inputs, SpotSource source, Map<GroupBy, KeptSums> kept) {
        References references = inputs.references(source);
        SpotInHand hand = inputs.hand();
        Map<GroupBy, BlockSums.Compared> each = new EnumMap<>(GroupBy.class);
        Map<GroupBy, Grouping> all = new EnumMap<>(GroupBy.class);
        List<SpotBlocks> blocks = new ArrayList<>();
        kept.forEach((by, sums) -> {
            each.put(by, new BlockSums.Compared(sums.blocks()));
            all.put(by, new Grouping(hand, by, references, source, Integer.MAX_VALUE, each.get(by)));
            all.get(by).startKnowing(sums);
            blocks.add(all.get(by).blocks());
        });
        source.forEachPlace((place, spot, counts) -> next(blocks, place, spot, counts));
        finish(all.values(), source);
        Map<GroupBy, Recounted> found = new EnumMap<>(GroupBy.class);
        all.forEach((by, grouping) -> {
            SampleSums.Comparison together = new SampleSums(grouping, List.of()).comparedWith(kept.get(by));
            found.put(by, new Recounted(grouping.blocks().spotCount(), together.and(each.get(by).comparison())));
        });
        return found;
    }
}
