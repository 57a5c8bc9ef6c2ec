package surfeit.segregation.blocks;

import java.util.ArrayList;
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
        sums.read(soFar);
        return sums;
    }

    /** Reads every spot once for all that begin at the same one. */
    private void read(SpotSource source) {
        List<SpotBlocks> fromFirst = new ArrayList<>();
        Map<Long, List<SpotBlocks>> later = new TreeMap<>();
        Map<Long, KeptSums> sums = new TreeMap<>();
        all.values().forEach(grouping -> grouping.start(source).ifPresentOrElse(kept -> {
            later.computeIfAbsent(kept.mark(), mark -> new ArrayList<>()).add(grouping.blocks());
            sums.put(kept.mark(), kept);
        }, () -> fromFirst.add(grouping.blocks())));
        if (!fromFirst.isEmpty()) {
            source.forEachPlace((place, spot, counts) -> next(fromFirst, place, spot, counts));
        }
        later.forEach((mark, some) ->
            sums.get(mark).forEachLater((place, spot, counts) -> next(some, place, spot, counts)));
    }

    /**
     * The sums of all spots, after one of those in the kept sums has changed: of its block and of those that came later
     * every spot is read, of the other blocks none. A way of grouping is left out where that is not enough: where its
     * blocks are not kept one by one, or the spot's group lists another element, or has another sign, than before.
     *
     * @param place the spot's place in the record
     * @throws CompositionException where the nominal cannot be compared with
     */
    public static Map<GroupBy, SampleSums> changed(Inputs inputs, SpotSource source, Map<GroupBy, Integer> mostParticles,
                                                   long place) {
        GrowingSums sums = new GrowingSums(inputs, source, mostParticles);
        sums.all.values().removeIf(grouping -> !grouping.startChanged(source, place));
        return sums.made();
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
        all.values().forEach(grouping -> grouping.finish(source));
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
        Map<GroupBy, Recounted> found = new EnumMap<>(GroupBy.class);
        all.forEach((by, grouping) -> {
            grouping.finish(source);
            SampleSums.Comparison together = new SampleSums(grouping, List.of()).comparedWith(kept.get(by));
            found.put(by, new Recounted(grouping.blocks().spotCount(), together.and(each.get(by).comparison())));
        });
        return found;
    }
}
