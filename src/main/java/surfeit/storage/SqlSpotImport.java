package surfeit.storage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import surfeit.lab.ImportReport;
import surfeit.lab.KeptFile;
import surfeit.lab.Occasion;
import surfeit.lab.PublicId;
import surfeit.lab.SampleRevision;
import surfeit.lab.SpotImportAccess;
import surfeit.lab.StoredSample;
import surfeit.spot.Spot;

/**
 * One import while it is written, over statements prepared once and run in lots: a new spot costs two inserts and no
 * question.
 *
 * <p>The row of the import comes with the first thing recorded, so that an upload with nothing new leaves no trace.
 * Bound to one transaction; not thread-safe.
 */
final class SqlSpotImport implements SpotImportAccess {
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

    private final SqlImports imports;
    private final SqlSamples samples;
    private final ContentDigest content;
    private final StoredSample sample;
    private final Occasion occasion;
    private final long sampleNumber;
    private final long number;
    private final long firstSpot;
    private long nextSpot;
    private boolean begun;
    private final int[] parts = new int[KeptFile.Kind.values().length];

    private final PreparedStatement insertSpot;
    private final PreparedStatement insertRevision;
    private final PreparedStatement findSpot;

    SqlSpotImport(Handle handle, SqlSamples samples, SqlImports imports, ContentDigest content, StoredSample sample,
                  Occasion occasion) {
        this.imports = imports;
        this.content = content;
        this.samples = samples;
        this.sample = sample;
        this.occasion = occasion;
        this.sampleNumber = samples.number(sample.name());
        this.number = imports.nextNumber();
        this.firstSpot = handle.createQuery("SELECT coalesce(max(id), 0) + 1 FROM spot").mapTo(Long.class).one();
        this.nextSpot = firstSpot;
        Connection connection = handle.getConnection();
        try {
            this.insertSpot = connection.prepareStatement(INSERT_SPOT);
            this.insertRevision = connection.prepareStatement(INSERT_REVISION);
            this.findSpot = connection.prepareStatement(FIND_SPOT);
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
        handle.addCleanable(this::close);
    }

    @Override
    public List<Optional<Recorded>> add(List<Spot> spots) {
        try {
            if (!begun) {
                List<Optional<Recorded>> found = findAll(spots);
                if (found.stream().allMatch(Optional::isPresent)) {
                    return found;
                }
                begin();
            }
            boolean[] inserted = insertSpots(spots);
            insertRevisions(spots, inserted);
            nextSpot += spots.size();
            List<Optional<Recorded>> found = new ArrayList<>(spots.size());
            for (int i = 0; i < inserted.length; i++) {
                found.add(inserted[i] ? Optional.empty() : find(spots.get(i)));
            }
            return found;
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }

    private List<Optional<Recorded>> findAll(List<Spot> spots) throws SQLException {
        List<Optional<Recorded>> found = new ArrayList<>(spots.size());
        for (Spot spot : spots) {
            found.add(find(spot));
        }
        return found;
    }

    /** Tries to insert each spot under a number of its own. @return which of them were new */
    private boolean[] insertSpots(List<Spot> spots) throws SQLException {
        for (int i = 0; i < spots.size(); i++) {
            insertSpot.setLong(1, nextSpot + i);
            bindKey(insertSpot, 2, spots.get(i));
            insertSpot.setLong(6, number);
            insertSpot.addBatch();
        }
        int[] counts = insertSpot.executeBatch();
        boolean[] inserted = new boolean[counts.length];
        for (int i = 0; i < counts.length; i++) {
            inserted[i] = counts[i] == 1;
        }
        return inserted;
    }

    private void insertRevisions(List<Spot> spots, boolean[] inserted) throws SQLException {
        for (int i = 0; i < inserted.length; i++) {
            if (inserted[i]) {
                bindRevision(nextSpot + i, spots.get(i));
                insertRevision.addBatch();
            }
        }
        insertRevision.executeBatch();
    }

    private void bindKey(PreparedStatement statement, int from, Spot spot) throws SQLException {
        statement.setLong(from, sampleNumber);
        statement.setString(from + 1, spot.session().orElse(""));
        statement.setString(from + 2, spot.label());
        statement.setLong(from + 3, AcquiredTime.of(spot.key().acquired()));
    }

    private void bindRevision(long spotNumber, Spot spot) throws SQLException {
        insertRevision.setLong(1, sampleNumber);
        insertRevision.setLong(2, spotNumber);
        insertRevision.setLong(3, sample.revision() + 1);
        insertRevision.setInt(4, spot.isReference() ? 1 : 0);
        bindText(insertRevision, 5, spot.feature());
        bindText(insertRevision, 6, spot.particle());
        byte[] payload = SpotCodec.encode(spot);
        insertRevision.setBytes(7, payload);
        content.key(spot.session().orElse(""), spot.label(), AcquiredTime.of(spot.key().acquired()));
        content.group(spot.isReference(), spot.feature(), spot.particle());
        content.spot(spotNumber, 1, false, Optional.empty(), payload);
    }

    private static void bindText(PreparedStatement statement, int index, Optional<String> text) throws SQLException {
        if (text.isPresent()) {
            statement.setString(index, text.get());
        } else {
            statement.setNull(index, Types.VARCHAR);
        }
    }

    private Optional<Recorded> find(Spot spot) throws SQLException {
        bindKey(findSpot, 1, spot);
        try (ResultSet rows = findSpot.executeQuery()) {
            if (!rows.next()) {
                return Optional.empty();
            }
            long found = rows.getLong(1);
            return Optional.of(new Recorded(PublicId.of(PublicId.SPOT, found), SpotCodec.decode(rows.getBytes(3)),
                rows.getInt(2) == 1, found >= firstSpot));
        }
    }

    @Override
    public void appendFile(KeptFile.Kind kind, byte[] bytes, int length) {
        begin();
        imports.addFilePart(number, kind, parts[kind.ordinal()]++, Arrays.copyOf(bytes, length));
    }

    private void begin() {
        if (!begun) {
            imports.begin(number, sampleNumber, sample.revision(), occasion);
            begun = true;
        }
    }

    @Override
    public String id() {
        return PublicId.of(PublicId.IMPORT, number);
    }

    @Override
    public void finish(ImportReport report) {
        begin();
        imports.complete(number, report);
        if (report.acceptedCount() > 0) {
            samples.addRevision(sample, SampleRevision.What.SPOTS_IMPORTED, occasion, id(),
                sample.spotCount() + report.acceptedCount());
        }
    }

    private void close() throws SQLException {
        insertSpot.close();
        insertRevision.close();
        findSpot.close();
    }
}
