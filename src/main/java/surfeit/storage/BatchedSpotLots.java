package surfeit.storage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jdbi.v3.core.Handle;
import surfeit.spot.Spot;

/** Over statements prepared once and run in batches: a new spot costs two inserts and no question. Not thread-safe. */
final class BatchedSpotLots implements SpotLots {
    private static final String INSERT_SPOT =
        "INSERT INTO spot (id, sample, session, label, acquired, import) VALUES (?, ?, ?, ?, ?, ?)";
    private static final String INSERT_SPOT_UNLESS_KNOWN =
        INSERT_SPOT + " ON CONFLICT (sample, session, label, acquired) DO NOTHING";
    private static final String INSERT_REVISION = """
        INSERT INTO spot_revision
            (sample, spot, n, from_revision, withdrawn, reference, feature, particle, payload)
        VALUES (?, ?, 1, ?, 0, ?, ?, ?, ?)""";
    private static final String FIND_SPOT = """
        SELECT p.id, r.withdrawn, r.payload FROM spot p
        JOIN spot_revision r ON r.sample = p.sample AND r.spot = p.id AND r.until_revision IS NULL
        WHERE p.sample = ? AND p.session = ? AND p.label = ? AND p.acquired = ?""";

    private final Handle handle;
    private final long sample;
    private final long importNumber;
    private final long sampleRevision;

    BatchedSpotLots(Handle handle, long sample, long importNumber, long sampleRevision) {
        this.handle = handle;
        this.sample = sample;
        this.importNumber = importNumber;
        this.sampleRevision = sampleRevision;
    }

    @Override
    public List<Optional<Found>> find(List<Spot> spots) {
        return spots.stream().map(this::find).toList();
    }

    private Optional<Found> find(Spot spot) {
        return PlainSql.listOf(List.of(new Place(sample, spot.key())), handle, FIND_SPOT,
            row -> new Found(row.getLong(1), row.getInt(2) == 1, row.getBytes(3)), sample, spot.session().orElse(""),
            spot.label(), AcquiredTime.of(spot.key().acquired())).stream().findFirst();
    }

    @Override
    public void recordNew(long first, List<Spot> spots, List<byte[]> payloads) {
        for (int i = 0; i < spots.size(); i++) {
            PlainSql.write(handle, INSERT_SPOT, spotValues(first + i, spots.get(i)));
            PlainSql.write(handle, INSERT_REVISION, revisionValues(first + i, spots.get(i), payloads.get(i)));
            PlainSql.tell(handle, new Place(sample, spots.get(i).key()));
        }
    }

    @Override
    public boolean[] record(long first, List<Spot> spots, List<byte[]> payloads) {
        int[] counts = PlainSql.batch(handle, INSERT_SPOT_UNLESS_KNOWN, IntStream.range(0, spots.size())
            .mapToObj(i -> spotValues(first + i, spots.get(i))).toList());
        boolean[] inserted = new boolean[counts.length];
        List<Object[]> revisions = new ArrayList<>(counts.length);
        for (int i = 0; i < counts.length; i++) {
            inserted[i] = counts[i] == 1;
            if (inserted[i]) {
                revisions.add(revisionValues(first + i, spots.get(i), payloads.get(i)));
            }
        }
        PlainSql.batch(handle, INSERT_REVISION, revisions);
        return inserted;
    }

    private Object[] spotValues(long number, Spot spot) {
        return new Object[] {number, sample, spot.session().orElse(""), spot.label(),
            AcquiredTime.of(spot.key().acquired()), importNumber};
    }

    private Object[] revisionValues(long number, Spot spot, byte[] payload) {
        return new Object[] {sample, number, sampleRevision, spot.isReference() ? 1 : 0, spot.feature(),
            spot.particle(), payload};
    }
}
