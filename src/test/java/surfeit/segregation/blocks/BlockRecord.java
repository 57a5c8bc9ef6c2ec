package surfeit.segregation.blocks;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import surfeit.segregation.answer.GroupBy;
import surfeit.spot.Spot;

/** A record in memory that keeps sums in small blocks of spots, as the service does, and counts the spots it hands over. */
final class BlockRecord implements SpotSource {
    private static final int MOST_PARTICLES = 1000;

    private final GrowingSums.Inputs inputs;
    private final int placesInBlock;
    private final int mostParticles;
    private final List<Spot> spots = new ArrayList<>();
    private final Set<Integer> withdrawn = new HashSet<>();
    private final Map<GroupBy, Sums> kept = new EnumMap<>(GroupBy.class);
    private long handedOver;

    /** What is kept for one way of grouping. */
    private static final class Sums {
        private int last;
        private byte[] open = new byte[0];
        private byte[] notes = new byte[0];
        private Optional<SumsBlock> full = Optional.empty();
        private final Map<Integer, SumsBlock> blocks = new TreeMap<>();
    }

    BlockRecord(GrowingSums.Inputs inputs, int placesInBlock) {
        this(inputs, placesInBlock, MOST_PARTICLES);
    }

    BlockRecord(GrowingSums.Inputs inputs, int placesInBlock, int mostParticles) {
        this.inputs = inputs;
        this.placesInBlock = placesInBlock;
        this.mostParticles = mostParticles;
    }

    void add(List<Spot> more) {
        spots.addAll(more);
    }

    int size() {
        return spots.size();
    }

    Spot spot(int index) {
        return spots.get(index);
    }

    boolean isWithdrawn(int index) {
        return withdrawn.contains(index);
    }

    void correct(int index, Spot spot) {
        spots.set(index, spot);
        withdrawn.remove(index);
    }

    void withdraw(int index) {
        withdrawn.add(index);
    }

    /** The same spots without those withdrawn, recorded in one go; nothing is kept of them. */
    BlockRecord fresh() {
        BlockRecord fresh = new BlockRecord(inputs, placesInBlock);
        for (int i = 0; i < spots.size(); i++) {
            if (!withdrawn.contains(i)) {
                fresh.spots.add(spots.get(i));
            }
        }
        return fresh;
    }

    /** Has the sums go on to the last spot. */
    void goOn(GroupBy by) {
        keep(by, GrowingSums.of(inputs, this, Map.of(by, mostParticles)).finish(this).get(by));
    }

    /** Adds spots and has the sums go on while they come, as with an upload: they begin with what was there before. */
    void addAlong(GroupBy by, List<Spot> more) {
        int before = spots.size();
        GrowingSums sums = GrowingSums.of(inputs, new Before(before), Map.of(by, mostParticles));
        add(more);
        handOver(before, spots.size(), sums);
        keep(by, sums.finish(this).get(by));
    }

    /** A spot has changed. */
    void changed(GroupBy by, int index) {
        keep(by, GrowingSums.changed(inputs, this, Map.of(by, mostParticles), index + 1).get(by));
    }

    void forget(GroupBy by) {
        kept.remove(by);
    }

    GrowingSums.Recounted recount(GroupBy by) {
        return GrowingSums.recount(inputs, this, Map.of(by, kept(by).orElseThrow())).get(by);
    }

    /** Spots up to the last one in the sums. */
    int summed(GroupBy by) {
        return Optional.ofNullable(kept.get(by)).map(sums -> sums.last).orElse(0);
    }

    int blocksKept(GroupBy by) {
        return kept.get(by).blocks.size();
    }

    /** Puts another spot into what is kept of one block. */
    void spoil(GroupBy by, int block, byte[] bytes) {
        kept.get(by).blocks.put(block, new SumsBlock(block, kept.get(by).blocks.get(block).lastPlace(), bytes));
    }

    byte[] block(GroupBy by, int block) {
        return kept.get(by).blocks.get(block).bytes();
    }

    private void keep(GroupBy by, SampleSums made) {
        Sums sums = made.areAnew() ? new Sums() : kept.get(by);
        if (!made.blocksAreKept()) {
            sums.blocks.clear();
        }
        made.blocks().forEach(block -> sums.blocks.put(block.number(), block));
        made.fullBlocks().ifPresent(full -> sums.full = Optional.of(full));
        sums.open = made.toBytes();
        sums.notes = made.notes();
        sums.last = spots.size();
        kept.put(by, sums);
    }

    /** Spots handed over since this was asked last. */
    long handedOver() {
        long count = handedOver;
        handedOver = 0;
        return count;
    }

    private void handOver(long after, long last, SpotPlaces places) {
        for (int i = (int) after; i < Math.min(last, spots.size()); i++) {
            handedOver++;
            places.next(i + 1, spots.get(i), !withdrawn.contains(i) && !spots.get(i).isReference());
        }
    }

    @Override
    public List<Spot> references() {
        List<Spot> references = new ArrayList<>();
        for (int i = 0; i < spots.size(); i++) {
            if (spots.get(i).isReference() && !withdrawn.contains(i)) {
                references.add(spots.get(i));
            }
        }
        return references;
    }

    @Override
    public void forEachPlace(SpotPlaces places) {
        handOver(0, spots.size(), places);
    }

    @Override
    public int placesInBlock() {
        return placesInBlock;
    }

    @Override
    public Optional<KeptSums> kept(GroupBy by) {
        return kept(by, Integer.MAX_VALUE);
    }

    private Optional<KeptSums> kept(GroupBy by, int last) {
        return Optional.ofNullable(kept.get(by)).map(sums -> new Kept(sums, last));
    }

    /** The record as it was when it held so many spots. */
    private final class Before implements SpotSource {
        private final int size;

        Before(int size) {
            this.size = size;
        }

        @Override
        public List<Spot> references() {
            return BlockRecord.this.references();
        }

        @Override
        public void forEachPlace(SpotPlaces places) {
            handOver(0, size, places);
        }

        @Override
        public int placesInBlock() {
            return placesInBlock;
        }

        @Override
        public Optional<KeptSums> kept(GroupBy by) {
            return BlockRecord.this.kept(by, size);
        }
    }

    private final class Kept implements KeptSums {
        private final Sums sums;
        private final int size;

        Kept(Sums sums, int size) {
            this.sums = sums;
            this.size = size;
        }

        @Override
        public byte[] bytes() {
            return sums.open;
        }

        @Override
        public Optional<byte[]> fullBlocks() {
            return sums.full.map(SumsBlock::bytes);
        }

        @Override
        public byte[] notes() {
            return sums.notes;
        }

        @Override
        public long mark() {
            return sums.last;
        }

        @Override
        public void forEachLater(SpotPlaces places) {
            handOver(sums.last, size, places);
        }

        @Override
        public void forEachAfterFull(SpotPlaces places) {
            handOver(sums.full.map(SumsBlock::lastPlace).orElse(0L), size, places);
        }

        @Override
        public List<Block> blocks() {
            return sums.blocks.values().stream().<Block>map(InMemory::new).toList();
        }
    }

    private final class InMemory implements KeptSums.Block {
        private final SumsBlock block;

        InMemory(SumsBlock block) {
            this.block = block;
        }

        @Override
        public long lastPlace() {
            return block.lastPlace();
        }

        @Override
        public byte[] bytes() {
            return block.bytes();
        }

        @Override
        public void forEachSpot(SpotPlaces places) {
            handOver(block.lastPlace() - placesInBlock, block.lastPlace(), places);
        }
    }
}
