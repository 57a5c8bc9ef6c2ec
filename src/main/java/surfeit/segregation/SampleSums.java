package surfeit.segregation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.NominalFractions;
import surfeit.composition.Phase;
import surfeit.spot.Sample;
import surfeit.spot.SpotCentre;

/**
 * The sums that an answer for a sample is made from, to be kept beside its spots: whoever has them reads the later
 * spots only. They grow with particles and elements, not with spots.
 *
 * <p>In front stand the inputs they were made from: another method, limit, nominal, beam energy, exclusion, phase
 * diagram or gain of reference spots, and they are not gone on from. Every sum is kept to the last bit, and later spots
 * are added in the order of record, so an answer from kept sums is the answer from all spots.
 */
public final class SampleSums {
    private final Grouping grouping;

    private SampleSums(Grouping grouping) {
        this.grouping = grouping;
    }

    /** Whether there are sums to keep: a median needs every spot. */
    public static boolean canBeKept(Sample sample) {
        return sample.judgement().spotCentre() != SpotCentre.MEDIAN;
    }

    /**
     * Sums up the spots of a source for several ways of grouping at once, going on from sums kept of it where they fit.
     *
     * @param mostParticles per way of grouping, particles up to which sums are kept: they bound the memory this takes
     * @return without a way of grouping that has more particles; empty where the nominal cannot be compared with
     */
    public static Map<GroupBy, SampleSums> of(Sample sample, Nominal nominal, List<Phase> phases, SpotSource source,
                                              Map<GroupBy, Integer> mostParticles, double detectionLimitMassFraction) {
        try {
            MethodSettings settings =
                MethodSettings.of(sample.judgement(), sample.accuracyClass(), detectionLimitMassFraction);
            References references = new References(source.references(), sample, settings.floorMassFraction(),
                detectionLimitMassFraction);
            NominalFractions closed = Interpreter.closedNominal(nominal, sample);
            Map<GroupBy, Grouping> all = new EnumMap<>(GroupBy.class);
            mostParticles.keySet().forEach(by -> all.put(by,
                new Grouping(sample, closed, by, detectionLimitMassFraction, references, phases)));
            read(source, all, mostParticles);
            Map<GroupBy, SampleSums> sums = new EnumMap<>(GroupBy.class);
            all.forEach((by, grouping) -> {
                grouping.finish(source);
                if (!grouping.isOverfull()) {
                    sums.put(by, new SampleSums(grouping));
                }
            });
            return sums;
        } catch (CompositionException e) {
            return Map.of();
        }
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
            source.forEachSpecimen(spot -> fromFirst.forEach(grouping -> grouping.add(spot)));
        }
        later.forEach((mark, groupings) ->
            sums.get(mark).forEachLater(spot -> groupings.forEach(grouping -> grouping.add(spot))));
    }

    /** True where these sums go on from kept ones; false where every spot was read. */
    public boolean wentOn() {
        return grouping.wentOn();
    }

    public byte[] toBytes() {
        SumsBytes bytes = new SumsBytes();
        grouping.writeTo(bytes);
        return bytes.toBytes();
    }

    /** A note to be kept beside them, for {@link GroupNotes#areDisturbed}. */
    public byte[] notes() {
        return grouping.notes();
    }

    public long spotCount() {
        return grouping.spotCount();
    }

    public int particleCount() {
        return grouping.particleCount();
    }

    /** These sums beside kept ones: how many were compared, and the first that differs by more than a rounding. */
    public record Comparison(long compared, Optional<String> difference) {
    }

    /** Compares these sums with kept ones that were made from the same inputs. */
    public Comparison comparedWith(byte[] kept) {
        SumsCheck check = new SumsCheck(kept);
        try {
            grouping.writeTo(check);
            return new Comparison(check.compared(), check.difference());
        } catch (SumsIn.UnfitException e) {
            return new Comparison(check.compared(), Optional.of("what is kept cannot be read: " + e.getMessage()));
        }
    }
}
