package surfeit.segregation.blocks;

import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import surfeit.segregation.sums.GroupKey;
import surfeit.segregation.sums.GroupTally;
import surfeit.segregation.sums.References;
import surfeit.segregation.sums.SumsIn;
import surfeit.segregation.sums.SumsOut;
import surfeit.spot.Spot;

/**
 * The spots of a sample summed up in blocks of as many places of its record.
 *
 * <p>The spots of a block are added one by one; the sums of a full block are put to those of all full blocks before it.
 * So every sum is the same to the last bit whether it comes from the spots, from kept sums and later spots, or from kept
 * blocks of which one was read again. Not thread-safe.
 */
public final class SpotBlocks implements SpotPlaces {
    /**
     * Particles that all full blocks together may list, as a multiple of those of the sample: beyond it the blocks are
     * not kept one by one. Judgement: they may take some megabytes.
     */
    private static final long PARTICLES_LISTED_MAX = 2;

    private final SumsInputs inputs;
    private final int particlesMax;
    private final BlockSums each;
    private final Function<GroupKey, Optional<GroupTally.Closing>> closing = this::closing;
    private SpotBlock full;
    private SpotBlock open;
    private int fullCount;
    private long lastOfFull;
    private long particlesListed;
    private boolean fullChanged;
    private boolean overfull;
    private Map<GroupKey, GroupTally.Closing> known = Map.of();

    /**
     * @param particlesMax over more particles it gives up
     * @param each         is told the sums of each full block
     */
    SpotBlocks(SumsInputs inputs, References references, int particlesMax, BlockSums each) {
        this.inputs = inputs;
        this.particlesMax = particlesMax;
        this.each = each;
        this.full = new SpotBlock(inputs.hand(), inputs.by(), references);
        this.open = full.empty();
    }

    @Override
    public void next(long place, Spot spot, boolean counts) {
        if (overfull) {
            return;
        }
        add(open, spot, counts);
        overfull = open.particleNames().size() > particlesMax;
        if (open.places() == inputs.placesInBlock()) {
            fullCount++;
            lastOfFull = place;
            fullChanged = true;
            if (areKept() && !open.isStale()) {
                each.full(fullCount, place, out -> write(open, out));
            }
            put(open);
            open = open.empty();
        }
    }

    private void add(SpotBlock block, Spot spot, boolean counts) {
        if (counts) {
            block.add(spot, closing);
        } else {
            block.pass();
        }
    }

    /** Puts a full block to those before it. */
    private void put(SpotBlock block) {
        particlesListed += block.particleNames().size();
        full.merge(block);
        overfull |= full.particleNames().size() > particlesMax;
    }

    /** By what a group is closed that no spot of the block belonged to so far. */
    private Optional<GroupTally.Closing> closing(GroupKey key) {
        return Optional.ofNullable(known.get(key))
            .or(() -> Optional.ofNullable(full.tallies().get(key)).map(GroupTally::closing));
    }

    /** Begins with nothing, groups closed so; those that are not named by what their first spots show. */
    void clear(Map<GroupKey, GroupTally.Closing> closings) {
        full = full.empty();
        open = open.empty();
        fullCount = 0;
        lastOfFull = 0;
        particlesListed = 0;
        fullChanged = false;
        known = closings;
    }

    /** Begins with kept sums. @return false where they were made from other inputs: then it holds nothing */
    boolean goesOnFrom(KeptSums kept) {
        try {
            SumsIn in = new SumsIn(kept.bytes());
            inputs.require(in);
            fullCount = (int) in.count();
            lastOfFull = in.count();
            particlesListed = in.count();
            open.readFrom(in);
            if (fullCount > 0) {
                full = read(kept.fullBlocks().orElseThrow(() -> new SumsIn.UnfitException("full blocks")));
            }
            return true;
        } catch (SumsIn.UnfitException e) {
            clear(known);
            return false;
        }
    }

    private SpotBlock read(byte[] bytes) {
        SumsIn in = new SumsIn(bytes);
        inputs.require(in);
        return open.empty().readFrom(in);
    }

    /**
     * Reads the block again that one spot lies in, and all later spots; it holds the sums kept before that spot changed.
     *
     * @param place the spot's
     * @return false where the blocks are not kept one by one, or damaged; then it must be {@linkplain #clear cleared}
     */
    boolean renew(KeptSums kept, long place) {
        known = closings();
        if (place > lastOfFull) {
            open = open.empty();
            kept.forEachAfterFull(this);
            return true;
        }
        List<KeptSums.Block> blocks = kept.blocks();
        if (blocks.size() != fullCount) {
            return false;
        }
        full = full.empty();
        particlesListed = 0;
        fullChanged = true;
        try {
            long before = 0;
            for (int i = 0; i < fullCount; i++) {
                KeptSums.Block block = blocks.get(i);
                put(before < place && place <= block.lastPlace() ? readAgain(i + 1, block) : read(block.bytes()));
                before = block.lastPlace();
            }
        } catch (SumsIn.UnfitException e) {
            return false;
        }
        kept.forEachLater(this);
        return true;
    }

    private SpotBlock readAgain(int number, KeptSums.Block kept) {
        SpotBlock block = open.empty();
        kept.forEachSpot((place, spot, counts) -> add(block, spot, counts));
        if (!block.isStale()) {
            each.full(number, kept.lastPlace(), out -> write(block, out));
        }
        return block;
    }

    /** Writes the sums of the open block, to be gone on from later, behind how many full ones lie before it. */
    void writeTo(SumsOut out) {
        inputs.writeTo(out);
        out.count("full blocks", fullCount);
        out.count("last spot of the full blocks", lastOfFull);
        out.count("particles listed in the full blocks", particlesListed);
        open.writeTo(out);
    }

    /** Writes the sums of all full blocks together. */
    void writeFullTo(SumsOut out) {
        write(full, out);
    }

    private void write(SpotBlock block, SumsOut out) {
        inputs.writeTo(out);
        block.writeTo(out);
    }

    /** All groups in the order of first appearance. */
    Set<GroupKey> keys() {
        if (fullCount == 0) {
            return open.tallies().keySet();
        }
        Set<GroupKey> keys = new LinkedHashSet<>(full.tallies().keySet());
        keys.addAll(open.tallies().keySet());
        return keys;
    }

    /** What the spots of a group are closed by. */
    private GroupTally.Closing closedBy(GroupKey key) {
        return both(key, GroupTally::closing);
    }

    /** What the spots of a group show. */
    GroupTally.Closing shown(GroupKey key) {
        return both(key, GroupTally::shown);
    }

    private GroupTally.Closing both(GroupKey key, Function<GroupTally, GroupTally.Closing> of) {
        if (!full.tallies().containsKey(key)) {
            return of.apply(open.tallies().get(key));
        }
        GroupTally.Closing before = of.apply(full.tallies().get(key));
        return open.tallies().containsKey(key) ? before.and(of.apply(open.tallies().get(key))) : before;
    }

    /** Whether the spots of a group must be read again, given what it and those merged with it show. */
    boolean mustReadAgain(GroupKey key, GroupTally.Closing all) {
        return full.tallies().containsKey(key) && full.tallies().get(key).mustReadAgain(all)
            || open.tallies().containsKey(key) && open.tallies().get(key).mustReadAgain(all);
    }

    /** What the spots of each group are closed by, in the order of first appearance. */
    Map<GroupKey, GroupTally.Closing> closings() {
        Map<GroupKey, GroupTally.Closing> closings = new LinkedHashMap<>();
        keys().forEach(key -> closings.put(key, closedBy(key)));
        return closings;
    }

    /** The sums of each group over all blocks. Nothing else may be asked of the sums afterwards. */
    Map<GroupKey, GroupTally> together() {
        if (fullCount > 0) {
            full.merge(open);
            open = full;
            full = full.empty();
        }
        return open.tallies();
    }

    /** True where there are more particles than were to be read; the groups then are not whole. */
    boolean isOverfull() {
        return overfull || particlesMax < Integer.MAX_VALUE && particleCount() > particlesMax;
    }

    int fullCount() {
        return fullCount;
    }

    /** Place of the last spot in a full block; 0 where there is none. */
    long lastOfFull() {
        return lastOfFull;
    }

    /** Whether the full blocks together are others than those it went on from. */
    boolean fullChanged() {
        return fullChanged;
    }

    /** Whether each full block is to be kept: not where particles come back in too many of them. */
    boolean areKept() {
        return particlesListed <= PARTICLES_LISTED_MAX * particlesMax;
    }

    public long spotCount() {
        return full.spotCount() + open.spotCount();
    }

    public int particleCount() {
        return count(SpotBlock::particleNames);
    }

    public int sessionCount() {
        return count(SpotBlock::sessionNames);
    }

    private int count(Function<SpotBlock, Collection<String>> names) {
        if (full.spotCount() == 0) {
            return names.apply(open).size();
        }
        Set<String> all = new HashSet<>(names.apply(full));
        all.addAll(names.apply(open));
        return all.size();
    }
}
