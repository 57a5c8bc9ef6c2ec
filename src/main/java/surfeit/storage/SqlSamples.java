package surfeit.storage;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jdbi.v3.core.statement.StatementContext;
import surfeit.lab.Occasion;
import surfeit.lab.RecentSamples;
import surfeit.lab.SampleFilter;
import surfeit.lab.SampleRevision;
import surfeit.lab.StoredSample;
import surfeit.spot.Sample;

/** Samples and their revisions in the database. Bound to one transaction; not thread-safe. */
final class SqlSamples {
    static final String SELECT = """
        SELECT s.id, s.name, r.n, r.described, r.spot_count, r.recorded, d.description, first.recorded AS created
        FROM sample s
        JOIN sample_revision r ON r.sample = s.id
        JOIN sample_revision d ON d.sample = s.id AND d.n = r.described
        JOIN sample_revision first ON first.sample = s.id AND first.n = 1
        """;

    private static final String FIND = SELECT + "WHERE s.name = ? AND r.n = s.revision";
    private static final String ADD_REVISION = """
        INSERT INTO sample_revision (sample, n, what, who, recorded, link, described, spot_count, description)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)""";

    private final Handle handle;

    SqlSamples(Handle handle) {
        this.handle = handle;
    }

    Optional<StoredSample> find(String name) {
        return PlainSql.listOf(List.of(name), handle, FIND, SqlSamples::found, name).stream().findFirst();
    }

    Optional<StoredSample> find(String name, long revision) {
        return handle.createQuery(SELECT + "WHERE s.name = :name AND r.n = :revision")
            .bind("name", name).bind("revision", revision).map(SqlSamples::sample).findOne();
    }

    List<StoredSample> list(SampleFilter filter, Optional<String> afterName, int limit) {
        StringBuilder sql = new StringBuilder(SELECT).append("WHERE r.n = s.revision AND s.name > :after");
        filter.alloy().ifPresent(alloy -> sql.append(" AND s.alloy = :alloy"));
        filter.text().ifPresent(text -> sql.append(" AND s.search LIKE :text ESCAPE '!'"));
        Query query = handle.createQuery(sql + " ORDER BY s.name LIMIT :limit")
            .bind("after", afterName.orElse("")).bind("limit", limit);
        filter.alloy().ifPresent(alloy -> query.bind("alloy", alloy));
        filter.text().ifPresent(text -> query.bind("text", pattern(text)));
        return query.map(SqlSamples::sample).list();
    }

    /**
     * Times are compared as text: without the Z at its end a time sorts before any later one of finer digits. Two of
     * them differ first in a digit or in their length, which all collations of a database order alike. The order is
     * found before descriptions are read, which only those of the page are.
     */
    List<StoredSample> recent(RecentSamples wanted, int limit) {
        StringBuilder sql = new StringBuilder(SELECT).append("""
            JOIN (SELECT w.id AS wanted, rtrim(c.recorded, 'Z') AS changed
                FROM sample w JOIN sample_revision c ON c.sample = w.id AND c.n = w.revision WHERE TRUE""");
        wanted.filter().alloy().ifPresent(alloy -> sql.append(" AND w.alloy = :alloy"));
        wanted.filter().text().ifPresent(text -> sql.append(" AND w.search LIKE :text ESCAPE '!'"));
        wanted.from().ifPresent(from -> sql.append(" AND rtrim(c.recorded, 'Z') >= :from"));
        wanted.to().ifPresent(to -> sql.append(" AND rtrim(c.recorded, 'Z') < :to"));
        wanted.after().ifPresent(after -> sql.append(" AND (rtrim(c.recorded, 'Z') < :changed"
            + " OR (rtrim(c.recorded, 'Z') = :changed AND w.name > :name))"));
        sql.append(" ORDER BY changed DESC, w.name LIMIT :limit) page ON page.wanted = s.id");
        Query query = handle.createQuery(sql + " WHERE r.n = s.revision ORDER BY page.changed DESC, s.name")
            .bind("limit", limit);
        wanted.filter().alloy().ifPresent(alloy -> query.bind("alloy", alloy));
        wanted.filter().text().ifPresent(text -> query.bind("text", pattern(text)));
        wanted.from().ifPresent(from -> query.bind("from", withoutZone(from)));
        wanted.to().ifPresent(to -> query.bind("to", withoutZone(to)));
        wanted.after().ifPresent(after -> query.bind("changed", withoutZone(after.changed())).bind("name",
            after.name()));
        return query.map(SqlSamples::sample).list();
    }

    private static String withoutZone(Instant time) {
        String text = time.toString();
        return text.substring(0, text.length() - 1);
    }

    List<SampleRevision> revisions(String name, long after, int limit) {
        return handle.createQuery("""
                SELECT r.n, r.what, r.who, r.recorded, r.link, r.spot_count
                FROM sample s JOIN sample_revision r ON r.sample = s.id
                WHERE s.name = :name AND r.n > :after ORDER BY r.n LIMIT :limit""")
            .bind("name", name).bind("after", after).bind("limit", limit)
            .map((row, context) -> new SampleRevision(row.getLong("n"),
                StoredWords.find("kind of change", row.getString("what"), SampleRevision.What.values(),
                    SampleRevision.What::words),
                new Occasion(row.getString("who"), Instant.parse(row.getString("recorded"))),
                Optional.ofNullable(row.getString("link")), row.getLong("spot_count")))
            .list();
    }

    long number(String name) {
        return PlainSql.listBeside(handle, "SELECT id FROM sample WHERE name = ?", row -> row.getLong(1), name).get(0);
    }

    void describe(String name, Sample sample, Occasion occasion) {
        Optional<StoredSample> present = find(name);
        long revision = present.map(StoredSample::revision).orElse(0L) + 1;
        if (present.isEmpty()) {
            handle.createUpdate("""
                    INSERT INTO sample (id, name, revision, search)
                    VALUES ((SELECT coalesce(max(id), 0) + 1 FROM sample), :name, 1, '')""")
                .bind("name", name).execute();
        }
        long number = number(name);
        insertRevision(number, revision, SampleRevision.What.DESCRIBED, occasion, Optional.empty(), revision,
            present.map(StoredSample::spotCount).orElse(0L), Optional.of(SampleCodec.encode(sample)));
        handle.createUpdate("UPDATE sample SET revision = :revision, alloy = :alloy, search = :search WHERE id = :id")
            .bind("revision", revision).bind("alloy", sample.alloy().orElse(null))
            .bind("search", (name + '\n' + sample.description()).toLowerCase(Locale.ROOT)).bind("id", number)
            .execute();
    }

    /** Counts a change of a sample's spots as a further revision. */
    void addRevision(StoredSample present, SampleRevision.What what, Occasion occasion, String link, long spotCount) {
        addRevision(number(present.name()), present, what, occasion, link, spotCount);
    }

    /** The same, of a sample whose key is known. */
    void addRevision(long number, StoredSample present, SampleRevision.What what, Occasion occasion, String link,
                     long spotCount) {
        long revision = present.revision() + 1;
        insertRevision(number, revision, what, occasion, Optional.of(link), present.described(), spotCount,
            Optional.empty());
        PlainSql.write(handle, "UPDATE sample SET revision = ? WHERE id = ?", revision, number);
        PlainSql.tell(handle, present.name());
    }

    private void insertRevision(long number, long revision, SampleRevision.What what, Occasion occasion,
                                Optional<String> link, long described, long spotCount, Optional<byte[]> description) {
        PlainSql.write(handle, ADD_REVISION, number, revision, what.words(), occasion.who(), occasion.when().toString(),
            link, described, spotCount, description);
    }

    private static StoredSample sample(ResultSet row, StatementContext context) throws SQLException {
        return found(row);
    }

    static StoredSample found(ResultSet row) throws SQLException {
        return new StoredSample(row.getString("name"), row.getLong("n"),
            SampleCodec.decode(row.getBytes("description")), row.getLong("described"), row.getLong("spot_count"),
            Instant.parse(row.getString("created")), Instant.parse(row.getString("recorded")));
    }

    /** What LIKE finds a text by, in small or capital letters, with its wild cards taken literally. */
    private static String pattern(String text) {
        return '%' + text.toLowerCase(Locale.ROOT).replace("!", "!!").replace("%", "!%").replace("_", "!_") + '%';
    }
}
