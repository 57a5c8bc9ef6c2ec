package surfeit.segregation;

import java.util.Optional;
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

    SampleSums(Grouping grouping) {
        this.grouping = grouping;
    }

    /** Whether there are sums to keep: a median needs every spot. */
    public static boolean canBeKept(Sample sample) {
        return sample.judgement().spotCentre() != SpotCentre.MEDIAN;
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
