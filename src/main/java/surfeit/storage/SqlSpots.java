package surfeit.storage;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jdbi.v3.core.statement.StatementContext;
import surfeit.element.Spelling;
import surfeit.lab.Alongside;
import surfeit.lab.Occasion;
import surfeit.lab.PublicId;
import surfeit.lab.SpotFilter;
import surfeit.lab.StoredSample;
import surfeit.lab.StoredSpot;
import surfeit.segregation.blocks.SpotPlaces;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Spot;

/** Spots and their revisions in the database. Bound to one transaction; not thread-safe. */
final class SqlSpots {
    private static final String SELECT = """
        SELECT p.id, m.name, p.import, r.n, r.from_revision, r.withdrawn, r.reason, r.payload, c.who, c.recorded
        FROM spot_revision r
        JOIN spot p ON p.id = r.spot
        JOIN sample m ON m.id = r.sample
        JOIN sample_revision c ON c.sample = r.sample AND c.n = r.from_revision
        """;
    /** The revisions of spots that held at one revision of the sample. */
    private static final String AS_OF =
        "r.sample = :sample AND r.from_revision <= :asOf AND (r.until_revision IS NULL OR r.until_revision > :asOf)";

    private static final String PAYLOADS =
        "SELECT r.payload FROM spot_revision r WHERE " + AS_OF + " AND r.withdrawn = 0";

    /** Rows that are fetched together, where the engine would else fetch all at once. */
    private static final int ROWS_AT_ONCE = 1000;

    private final Handle handle;
    private final SqlSamples samples;

    SqlSpots(Handle handle, SqlSamples samples) {
        this.handle = handle;
        this.samples = samples;
    }

    List<StoredSpot> list(StoredSample sample, SpotFilter filter, long after, int limit) {
        StringBuilder sql = new StringBuilder(SELECT).append("WHERE ").append(AS_OF).append(" AND r.spot > :after");
        filter.feature().ifPresent(feature -> sql.append(feature.equals(SpotFilter.UNLABELLED)
            ? " AND (r.feature IS NULL OR " + isOneOf("r.feature", "feature") + ")"
            : " AND " + isOneOf("r.feature", "feature")));
        filter.particle().ifPresent(particle -> sql.append(" AND ").append(isOneOf("r.particle", "particle")));
        filter.session().ifPresent(session -> sql.append(" AND ").append(isOneOf("p.session", "session")));
        filter.from().ifPresent(from -> sql.append(" AND p.acquired >= :from"));
        filter.to().ifPresent(to -> sql.append(" AND p.acquired < :to AND p.acquired > " + AcquiredTime.ABSENT));
        if (!filter.withdrawn()) {
            sql.append(" AND r.withdrawn = 0");
        }
        Query query = handle.createQuery(sql + " ORDER BY r.spot LIMIT :limit")
            .bind("sample", samples.number(sample.name())).bind("asOf", sample.revision())
            .bind("after", after).bind("limit", limit);
        filter.feature().ifPresent(feature -> bind(query, "feature", feature));
        filter.particle().ifPresent(particle -> bind(query, "particle", particle));
        filter.session().ifPresent(session -> bind(query, "session", session));
        filter.from().ifPresent(from -> query.bind("from", AcquiredTime.atLeast(from)));
        filter.to().ifPresent(to -> query.bind("to", AcquiredTime.atLeast(to)));
        return query.map(SqlSpots::spot).list();
    }

    /** A condition that holds for a name in any of the forms that {@link #bind} gives. */
    private static String isOneOf(String column, String name) {
        return column + " IN (:" + name + "Kept, :" + name + "Sent, :" + name + "Apart)";
    }

    /** Names are kept in one Unicode normal form; records of earlier versions may have another one. */
    private static void bind(Query query, String name, String text) {
        query.bind(name + "Kept", Spelling.composed(text)).bind(name + "Sent", text)
            .bind(name + "Apart", Spelling.decomposed(text));
    }

    Optional<StoredSpot> find(long spot) {
        return handle.createQuery(SELECT + "WHERE p.id = :spot AND r.sample = p.sample AND r.until_revision IS NULL")
            .bind("spot", spot).map(SqlSpots::spot).findOne();
    }

    List<StoredSpot> revisions(long spot) {
        return handle.createQuery(SELECT + "WHERE p.id = :spot AND r.sample = p.sample ORDER BY r.n")
            .bind("spot", spot).map(SqlSpots::spot).list();
    }

    void revise(StoredSpot present, Spot spot, boolean withdrawn, String reason, long sampleRevision) {
        long number = PublicId.number(PublicId.SPOT, present.id()).orElseThrow();
        long sample = samples.number(present.sample());
        handle.createUpdate("""
                UPDATE spot_revision SET until_revision = :until WHERE sample = :sample AND spot = :spot AND n = :n""")
            .bind("until", sampleRevision).bind("sample", sample).bind("spot", number).bind("n", present.revision())
            .execute();
        handle.createUpdate("""
                INSERT INTO spot_revision
                    (sample, spot, n, from_revision, reason, withdrawn, reference, feature, particle, payload)
                VALUES (:sample, :spot, :n, :from, :reason, :withdrawn, :reference, :feature, :particle, :payload)""")
            .bind("sample", sample).bind("spot", number).bind("n", present.revision() + 1)
            .bind("from", sampleRevision).bind("reason", reason).bind("withdrawn", withdrawn ? 1 : 0)
            .bind("reference", spot.isReference() ? 1 : 0).bind("feature", spot.feature().orElse(null))
            .bind("particle", spot.particle().orElse(null)).bind("payload", SpotCodec.encode(spot)).execute();
    }

    /** The spots of a sample as of its revision, read anew each time they are asked for. */
    SpotSource source(StoredSample sample, SqlSums sums) {
        return new SqlSpotSource(this, sums, sample, Long.MAX_VALUE);
    }

    /** The same, of the spots up to one of them only; reference spots all. */
    SpotSource sourceUpTo(StoredSample sample, SqlSums sums, long lastSpot) {
        return new SqlSpotSource(this, sums, sample, lastSpot);
    }

    /** The reference spots, looked up in an index of theirs, which only a question of its own is sure to use. */
    List<Spot> references(StoredSample sample) {
        return handle.createQuery(PAYLOADS + '\n' + """
                AND r.reference = 1 AND r.spot IN
                    (SELECT x.spot FROM spot_revision x WHERE x.sample = :sample AND x.reference = 1)
                ORDER BY r.spot""")
            .bind("sample", samples.number(sample.name())).bind("asOf", sample.revision())
            .map((row, context) -> SpotCodec.decode(row.getBytes(1))).list();
    }

    /** Hands over every spot that was ever recorded, after one and up to another. */
    void forEachPlace(StoredSample sample, long after, long last, SpotPlaces places) {
        try (Query query = handle.createQuery("SELECT r.payload, r.spot, r.withdrawn + r.reference FROM spot_revision r WHERE "
                + AS_OF + " AND r.spot > :after AND r.spot <= :last ORDER BY r.spot")) {
            query.bind("sample", samples.number(sample.name())).bind("asOf", sample.revision())
                .bind("after", after).bind("last", last).setFetchSize(ROWS_AT_ONCE);
            RepeatedTexts texts = new RepeatedTexts();
            query.scanResultSet((rows, context) -> {
                ResultSet found = rows.get();
                while (found.next()) {
                    places.next(found.getLong(2), SpotCodec.decode(found.getBytes(1), texts), found.getInt(3) == 0);
                }
                return found;
            });
        }
    }

    /**
     * The same for so many spots that reading them is worth a thread of its own. Nobody may use the transaction
     * meanwhile.
     */
    void forEachPlaceAlongside(StoredSample sample, long after, long last, SpotPlaces places) {
        Alongside.<AtPlace>run("surfeit-spots", read -> forEachPlace(sample, after, last,
            (place, spot, counts) -> read.accept(new AtPlace(place, spot, counts))),
            at -> places.next(at.place, at.spot, at.counts));
    }

    private record AtPlace(long place, Spot spot, boolean counts) {
    }

    private static StoredSpot spot(ResultSet row, StatementContext context) throws SQLException {
        return new StoredSpot(PublicId.of(PublicId.SPOT, row.getLong("id")), row.getString("name"), row.getLong("n"),
            row.getLong("from_revision"), SpotCodec.decode(row.getBytes("payload")), row.getInt("withdrawn") == 1,
            new Occasion(row.getString("who"), Instant.parse(row.getString("recorded"))),
            Optional.ofNullable(row.getString("reason")), PublicId.of(PublicId.IMPORT, row.getLong("import")));
    }
}
