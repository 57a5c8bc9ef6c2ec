package surfeit.storage;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import surfeit.spot.Spot;

/** Over statements prepared once and run in batches: a new spot costs two inserts and no question. Not thread-safe. */
final class BatchedSpotLots implements SpotLots {
    private static final String INSERT_SPOT = """
        INSERT INTO spot (id, sample, session, label, acquired, import) VALUES (?, ?, ?, ?, ?, ?)
        ON CONFLICT (sample, session, label, acquired) DO NOTHING""";
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
    private final PreparedStatement insertSpot;
    private final PreparedStatement insertRevision;
    private final PreparedStatement findSpot;

    BatchedSpotLots(Handle handle, long sample, long importNumber, long sampleRevision) {
        this.handle = handle;
        this.sample = sample;
        this.importNumber = importNumber;
        this.sampleRevision = sampleRevision;
        try {
            this.insertSpot = PlainSql.take(handle, INSERT_SPOT);
            this.insertRevision = PlainSql.take(handle, INSERT_REVISION);
            this.findSpot = PlainSql.take(handle, FIND_SPOT);
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }

    @Override
    public List<Optional<Found>> find(List<Spot> spots) throws SQLException {
        List<Optional<Found>> found = new ArrayList<>(spots.size());
        for (Spot spot : spots) {
            found.add(find(spot));
        }
        return found;
    }

    private Optional<Found> find(Spot spot) throws SQLException {
        bindKey(findSpot, 1, spot);
        try (ResultSet rows = findSpot.executeQuery()) {
            return rows.next() ? Optional.of(new Found(rows.getLong(1), rows.getInt(2) == 1, rows.getBytes(3)))
                : Optional.empty();
        }
    }

    @Override
    public boolean[] record(long first, List<Spot> spots, List<byte[]> payloads) throws SQLException {
        boolean[] inserted = insertSpots(first, spots);
        for (int i = 0; i < inserted.length; i++) {
            if (inserted[i]) {
                bindRevision(first + i, spots.get(i), payloads.get(i));
                insertRevision.addBatch();
            }
        }
        insertRevision.executeBatch();
        return inserted;
    }

    private boolean[] insertSpots(long first, List<Spot> spots) throws SQLException {
        for (int i = 0; i < spots.size(); i++) {
            insertSpot.setLong(1, first + i);
            bindKey(insertSpot, 2, spots.get(i));
            insertSpot.setLong(6, importNumber);
            insertSpot.addBatch();
        }
        int[] counts = insertSpot.executeBatch();
        boolean[] inserted = new boolean[counts.length];
        for (int i = 0; i < counts.length; i++) {
            inserted[i] = counts[i] == 1;
        }
        return inserted;
    }

    private void bindKey(PreparedStatement statement, int from, Spot spot) throws SQLException {
        statement.setLong(from, sample);
        statement.setString(from + 1, spot.session().orElse(""));
        statement.setString(from + 2, spot.label());
        statement.setLong(from + 3, AcquiredTime.of(spot.key().acquired()));
    }

    private void bindRevision(long spotNumber, Spot spot, byte[] payload) throws SQLException {
        insertRevision.setLong(1, sample);
        insertRevision.setLong(2, spotNumber);
        insertRevision.setLong(3, sampleRevision);
        insertRevision.setInt(4, spot.isReference() ? 1 : 0);
        bindText(insertRevision, 5, spot.feature());
        bindText(insertRevision, 6, spot.particle());
        insertRevision.setBytes(7, payload);
    }

    private static void bindText(PreparedStatement statement, int index, Optional<String> text) throws SQLException {
        if (text.isPresent()) {
            statement.setString(index, text.get());
        } else {
            statement.setNull(index, Types.VARCHAR);
        }
    }

    @Override
    public void close() throws SQLException {
        PlainSql.giveBack(handle, INSERT_SPOT, insertSpot);
        PlainSql.giveBack(handle, INSERT_REVISION, insertRevision);
        PlainSql.giveBack(handle, FIND_SPOT, findSpot);
    }
}
