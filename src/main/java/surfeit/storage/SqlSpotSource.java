package surfeit.storage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.lab.StoredSample;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.KeptSums;
import surfeit.segregation.blocks.SpotPlaces;
import surfeit.segregation.blocks.SpotSource;
import surfeit.segregation.blocks.SumsBlock;
import surfeit.spot.Spot;

/** The spots of a sample as of its revision, read anew each time they are asked for, beside the sums kept of them. */
final class SqlSpotSource implements SpotSource {
    /** Spots from which reading has a thread of its own. Judgement: some ten milliseconds. */
    static final int ALONGSIDE_FROM = 10_000;

    private final SqlSpots spots;
    private final SqlSums sums;
    private final StoredSample sample;
    private final long last;

    /** @param last number of the last spot of the specimen to hand over */
    SqlSpotSource(SqlSpots spots, SqlSums sums, StoredSample sample, long last) {
        this.spots = spots;
        this.sums = sums;
        this.sample = sample;
        this.last = last;
    }

    @Override
    public List<Spot> references() {
        return spots.references(sample);
    }

    @Override
    public void forEachPlace(SpotPlaces places) {
        if (sample.spotCount() < ALONGSIDE_FROM) {
            spots.forEachPlace(sample, 0, last, places);
        } else {
            spots.forEachPlaceAlongside(sample, 0, last, places);
        }
    }

    @Override
    public Optional<KeptSums> kept(GroupBy by) {
        return sums.find(sample, by).map(Kept::new);
    }

    /** The sums kept, as they were made of the blocks of spots. */
    private final class Kept implements KeptSums {
        private final SqlSums.Kept kept;

        Kept(SqlSums.Kept kept) {
            this.kept = kept;
        }

        @Override
        public byte[] bytes() {
            return kept.sums();
        }

        @Override
        public Optional<byte[]> fullBlocks() {
            return kept.full().map(SumsBlock::bytes);
        }

        @Override
        public byte[] notes() {
            return kept.notes();
        }

        @Override
        public long mark() {
            return kept.lastSpot();
        }

        @Override
        public void forEachLater(SpotPlaces places) {
            spots.forEachPlace(sample, kept.lastSpot(), last, places);
        }

        @Override
        public void forEachAfterFull(SpotPlaces places) {
            spots.forEachPlace(sample, kept.full().map(SumsBlock::lastPlace).orElse(0L), last, places);
        }

        @Override
        public List<Block> blocks() {
            List<Block> blocks = new ArrayList<>();
            long before = 0;
            for (SqlSumsBlocks.Border border : kept.blocks().borders()) {
                blocks.add(new KeptBlock(kept.blocks(), border, before));
                before = border.lastSpot();
            }
            return blocks;
        }
    }

    /** One full block, whose sums are read when they are asked for. */
    private final class KeptBlock implements KeptSums.Block {
        private final SqlSumsBlocks blocks;
        private final SqlSumsBlocks.Border border;
        private final long before;

        KeptBlock(SqlSumsBlocks blocks, SqlSumsBlocks.Border border, long before) {
            this.blocks = blocks;
            this.border = border;
            this.before = before;
        }

        @Override
        public long lastPlace() {
            return border.lastSpot();
        }

        /** What is damaged is no sums. */
        @Override
        public byte[] bytes() {
            return blocks.find(border.number()).filter(SqlSumsBlocks.Found::isIntact).map(found -> found.block().bytes())
                .orElse(new byte[0]);
        }

        @Override
        public void forEachSpot(SpotPlaces places) {
            spots.forEachPlace(sample, before, border.lastSpot(), places);
        }
    }
}
