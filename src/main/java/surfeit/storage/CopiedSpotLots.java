package surfeit.storage;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.postgresql.PGConnection;
import surfeit.spot.Spot;
import surfeit.spot.SpotKey;

/**
 * Over PostgreSQL's COPY: a lot costs one question and two streams of rows, however many spots it has. Only the one
 * whose turn it is writes, so that nothing comes between question and rows. Not thread-safe.
 */
final class CopiedSpotLots implements SpotLots {
    /** Spots from which a lot is copied rather than inserted. Judgement: two streams cost about as much as ten inserts. */
    private static final int COPIED_FROM = 16;
    private static final String COPY_SPOTS =
        "COPY spot (id, sample, session, label, acquired, import) FROM STDIN (FORMAT binary)";
    private static final String COPY_REVISIONS = "COPY spot_revision (sample, spot, n, from_revision, withdrawn, "
        + "reference, feature, particle, payload) FROM STDIN (FORMAT binary)";

    private final Connection connection;
    private final long sample;
    private final long importNumber;
    private final long sampleRevision;
    private final Handle handle;
    private final BatchedSpotLots few;

    CopiedSpotLots(Handle handle, long sample, long importNumber, long sampleRevision) {
        this.handle = handle;
        this.connection = handle.getConnection();
        this.sample = sample;
        this.importNumber = importNumber;
        this.sampleRevision = sampleRevision;
        this.few = new BatchedSpotLots(handle, sample, importNumber, sampleRevision);
    }

    @Override
    public List<Optional<Found>> find(List<Spot> spots) {
        List<Place> places = spots.stream().map(spot -> new Place(sample, spot.key())).toList();
        return PostgresLookup.find(handle, places);
    }

    @Override
    public void recordNew(long first, List<Spot> spots, List<byte[]> payloads) throws SQLException {
        if (spots.size() < COPIED_FROM) {
            few.recordNew(first, spots, payloads);
            return;
        }
        boolean[] isNew = new boolean[spots.size()];
        Arrays.fill(isNew, true);
        copy(first, spots, payloads, isNew);
    }

    @Override
    public boolean[] record(long first, List<Spot> spots, List<byte[]> payloads) throws SQLException {
        if (spots.size() < COPIED_FROM) {
            return few.record(first, spots, payloads);
        }
        boolean[] isNew = areNew(spots);
        copy(first, spots, payloads, isNew);
        return isNew;
    }

    private void copy(long first, List<Spot> spots, List<byte[]> payloads, boolean[] isNew) throws SQLException {
        CopiedRows rows = new CopiedRows();
        CopiedRows revisions = new CopiedRows();
        for (int i = 0; i < isNew.length; i++) {
            if (isNew[i]) {
                addSpot(rows, first + i, spots.get(i));
                addRevision(revisions, first + i, spots.get(i), payloads.get(i));
            }
        }
        PlainSql.sendBefore(handle, COPY_SPOTS);
        PGConnection engine = connection.unwrap(PGConnection.class);
        rows.send(engine, COPY_SPOTS);
        revisions.send(engine, COPY_REVISIONS);
    }

    private boolean[] areNew(List<Spot> spots) {
        List<Optional<Found>> found = find(spots);
        Set<SpotKey> seen = new HashSet<>();
        boolean[] isNew = new boolean[spots.size()];
        for (int i = 0; i < isNew.length; i++) {
            isNew[i] = found.get(i).isEmpty() && seen.add(spots.get(i).key());
        }
        return isNew;
    }

    private void addSpot(CopiedRows rows, long number, Spot spot) {
        rows.row(6).number(number).number(sample).text(Optional.of(spot.session().orElse("")))
            .text(Optional.of(spot.label())).number(AcquiredTime.of(spot.key().acquired())).number(importNumber);
    }

    private void addRevision(CopiedRows rows, long number, Spot spot, byte[] payload) {
        rows.row(9).number(sample).number(number).number(1).number(sampleRevision).number(0)
            .number(spot.isReference() ? 1 : 0).text(spot.feature()).text(spot.particle()).bytes(payload);
    }
}
