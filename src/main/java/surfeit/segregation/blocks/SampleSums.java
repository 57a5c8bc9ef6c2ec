package surfeit.segregation.blocks;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import surfeit.segregation.sums.SumsBytes;
import surfeit.segregation.sums.SumsCheck;
import surfeit.segregation.sums.SumsIn;
import surfeit.segregation.sums.SumsOut;
import surfeit.spot.Sample;
import surfeit.spot.SpotCentre;

/**
 * The sums that an answer for a sample is made from, to be kept beside its spots: whoever has them reads the later
 * spots only. They grow with particles and elements, not with spots.
 *
 * <p>In front stand the inputs they were made from: another method, limit, nominal, beam energy, exclusion, phase
 * diagram or gain of reference spots, and they are not gone on from. Every sum is kept to the last bit, later spots are
 * added in the order of record, and an answer from all spots sums them up in the same blocks, so an answer from kept sums
 * is the answer from all spots.
 */
public final class SampleSums {
    private final Grouping grouping;
    private final SpotBlocks blocks;
    private final List<SumsBlock> held;

    /** @param held the full blocks that are new or others than those kept, each by itself */
    SampleSums(Grouping grouping, List<SumsBlock> held) {
        this.grouping = grouping;
        this.blocks = grouping.blocks();
        this.held = List.copyOf(held);
    }

    /** Whether there are sums to keep: a median needs every spot. */
    public static boolean canBeKept(Sample sample) {
        return sample.judgement().spotCentre() != SpotCentre.MEDIAN;
    }

    /** True where there were kept sums to go on from: made from the same inputs. */
    public boolean wentOn() {
        return grouping.wentOn();
    }

    /** True where every spot was read: what is kept so far is of no use beside these. */
    public boolean areAnew() {
        return grouping.isAnew();
    }

    /** The sums of the open block. */
    public byte[] toBytes() {
        return bytes(blocks::writeTo);
    }

    /** How many full blocks lie before the open one. */
    public int fullBlockCount() {
        return blocks.fullCount();
    }

    /** The sums of all full blocks together; empty where they are those these went on from, or there are none. */
    public Optional<SumsBlock> fullBlocks() {
        return blocks.fullChanged()
            ? Optional.of(new SumsBlock(blocks.fullCount(), blocks.lastOfFull(), bytes(blocks::writeFullTo)))
            : Optional.empty();
    }

    /** Whether the full blocks are to be kept one by one: not where too many of the particles come back in them. */
    public boolean blocksAreKept() {
        return blocks.areKept();
    }

    /** The full blocks one by one that are new, or others than those these went on from. */
    public List<SumsBlock> blocks() {
        return blocksAreKept() ? held : List.of();
    }

    private static byte[] bytes(Consumer<SumsOut> sums) {
        SumsBytes bytes = new SumsBytes();
        sums.accept(bytes);
        return bytes.toBytes();
    }

    /** A note to be kept beside them, for {@link GroupNotes#areDisturbed}. */
    public byte[] notes() {
        return grouping.notes();
    }

    public long spotCount() {
        return blocks.spotCount();
    }

    public int particleCount() {
        return blocks.particleCount();
    }

    /** These sums beside kept ones: how many were compared, and the first that differs by more than a rounding. */
    public record Comparison(long compared, Optional<String> difference) {
        /** Both, the first difference of this one before that of the other. */
        Comparison and(Comparison other) {
            return new Comparison(compared + other.compared, difference.or(other::difference));
        }
    }

    /** Compares these sums with kept ones that were made from the same inputs; single blocks are not looked at. */
    public Comparison comparedWith(KeptSums kept) {
        Comparison open = compared(kept.bytes(), blocks::writeTo);
        return blocks.fullCount() == 0 || open.difference().isPresent() ? open
            : kept.fullBlocks().map(bytes -> open.and(compared(bytes, blocks::writeFullTo))).orElse(open);
    }

    static Comparison compared(byte[] kept, Consumer<SumsOut> sums) {
        SumsCheck check = new SumsCheck(kept);
        try {
            sums.accept(check);
            return new Comparison(check.compared(), check.difference());
        } catch (SumsIn.UnfitException e) {
            return new Comparison(check.compared(), Optional.of("what is kept cannot be read: " + e.getMessage()));
        }
    }
}
