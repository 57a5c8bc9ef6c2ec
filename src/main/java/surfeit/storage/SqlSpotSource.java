package surfeit.storage;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import surfeit.lab.StoredSample;
import surfeit.segregation.GroupBy;
import surfeit.segregation.KeptSums;
import surfeit.segregation.SpotSource;
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
    public void forEachSpecimen(Consumer<Spot> consumer) {
        if (sample.spotCount() < ALONGSIDE_FROM) {
            spots.forEachSpecimen(sample, 0, last, consumer);
        } else {
            spots.forEachSpecimenAlongside(sample, 0, last, consumer);
        }
    }

    @Override
    public Optional<KeptSums> kept(GroupBy by) {
        return sums.find(sample, by).map(kept -> new KeptSums() {
            @Override
            public byte[] bytes() {
                return kept.sums();
            }

            @Override
            public long mark() {
                return kept.lastSpot();
            }

            @Override
            public void forEachLater(Consumer<Spot> consumer) {
                spots.forEachSpecimen(sample, kept.lastSpot(), last, consumer);
            }
        });
    }
}
