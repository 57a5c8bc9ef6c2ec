package surfeit.storage;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import surfeit.composition.Alloy;
import surfeit.lab.Occasion;
import surfeit.lab.StoredAlloy;

/** The lab's own alloys in the database. Bound to one transaction; not thread-safe. */
final class SqlAlloys {
    private static final String SELECT =
        "SELECT r.n, r.who, r.recorded, r.payload FROM alloy a JOIN alloy_revision r ON r.alloy = a.id ";

    private final Handle handle;

    SqlAlloys(Handle handle) {
        this.handle = handle;
    }

    Optional<StoredAlloy> find(String id) {
        return handle.createQuery(SELECT + "WHERE a.id = :id AND r.n = a.revision").bind("id", id)
            .map(SqlAlloys::alloy).findOne();
    }

    Optional<StoredAlloy> find(String id, long revision) {
        return handle.createQuery(SELECT + "WHERE a.id = :id AND r.n = :revision").bind("id", id)
            .bind("revision", revision).map(SqlAlloys::alloy).findOne();
    }

    List<StoredAlloy> list() {
        return handle.createQuery(SELECT + "WHERE r.n = a.revision ORDER BY a.id").map(SqlAlloys::alloy).list();
    }

    StoredAlloy define(Alloy alloy, Occasion occasion) {
        long revision = find(alloy.id()).map(StoredAlloy::revision).orElse(0L) + 1;
        handle.createUpdate("""
                INSERT INTO alloy (id, revision) VALUES (:id, :revision)
                ON CONFLICT (id) DO UPDATE SET revision = excluded.revision""")
            .bind("id", alloy.id()).bind("revision", revision).execute();
        handle.createUpdate("""
                INSERT INTO alloy_revision (alloy, n, who, recorded, payload)
                VALUES (:id, :revision, :who, :recorded, :payload)""")
            .bind("id", alloy.id()).bind("revision", revision).bind("who", occasion.who())
            .bind("recorded", occasion.when().toString()).bind("payload", AlloyCodec.encode(alloy)).execute();
        return new StoredAlloy(alloy, revision, Optional.of(occasion));
    }

    private static StoredAlloy alloy(ResultSet row, StatementContext context) throws SQLException {
        return new StoredAlloy(AlloyCodec.decode(row.getBytes("payload")), row.getLong("n"),
            Optional.of(new Occasion(row.getString("who"), Instant.parse(row.getString("recorded")))));
    }
}
