package surfeit.segregation;

import java.util.List;
import java.util.Optional;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
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
     * Sums up the spots of a source, going on from sums kept of it where they fit.
     *
     * @param mostParticles particles up to which sums are kept: they bound the memory this takes
     * @return empty where there are more particles, or the spots cannot be compared with the nominal
     */
    public static Optional<SampleSums> of(Sample sample, Nominal nominal, List<Phase> phases, SpotSource source,
                                          GroupBy by, double detectionLimitMassFraction, int mostParticles) {
        try {
            MethodSettings settings =
                MethodSettings.of(sample.judgement(), sample.accuracyClass(), detectionLimitMassFraction);
            References references = new References(source.references(), sample, settings.floorMassFraction(),
                detectionLimitMassFraction);
            Grouping grouping = new Grouping(sample, Interpreter.closedNominal(nominal, sample), by,
                detectionLimitMassFraction, references, phases);
            grouping.read(source, mostParticles);
            return grouping.isOverfull() ? Optional.empty() : Optional.of(new SampleSums(grouping));
        } catch (CompositionException e) {
            return Optional.empty();
        }
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
