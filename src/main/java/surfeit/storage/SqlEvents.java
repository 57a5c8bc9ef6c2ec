package surfeit.storage;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jdbi.v3.core.statement.StatementContext;
import surfeit.lab.EventFilter;
import surfeit.lab.LabEvent;

/** Events in the database: one writer at a time makes their order that of the commits. Not thread-safe. */
final class SqlEvents {
    private final Handle handle;

    SqlEvents(Handle handle) {
        this.handle = handle;
    }

    LabEvent append(long id, LabEvent event) {
        PlainSql.write(handle, """
            INSERT INTO event (id, type, recorded, sample, subject, accepted_count) VALUES (?, ?, ?, ?, ?, ?)""", id,
            event.type().word(), event.time().toString(), event.sample(), event.subject(),
            event.acceptedCount().isPresent() ? event.acceptedCount().getAsLong() : null);
        return new LabEvent(id, event.type(), event.time(), event.sample(), event.subject(), event.acceptedCount());
    }

    List<LabEvent> list(EventFilter filter, long after, int limit) {
        StringBuilder sql = new StringBuilder("SELECT * FROM event WHERE id > :after");
        if (filter.types().isEmpty()) {
            return List.of();
        }
        boolean some = !filter.types().equals(EventFilter.ALL.types());
        if (some) {
            sql.append(" AND type IN (<types>)");
        }
        filter.sample().ifPresent(sample -> sql.append(" AND sample = :sample"));
        Query query = handle.createQuery(sql + " ORDER BY id LIMIT :limit").bind("after", after).bind("limit", limit);
        if (some) {
            query.bindList("types", filter.types().stream().map(LabEvent.Type::word).toList());
        }
        filter.sample().ifPresent(sample -> query.bind("sample", sample));
        return query.map(SqlEvents::event).list();
    }

    /** The beginning of the log up to the first event that is not old, so that no gap comes into being. */
    void forget(Instant before) {
        handle.createUpdate("""
                DELETE FROM event WHERE id < coalesce(
                    (SELECT id FROM event WHERE recorded >= :before ORDER BY id LIMIT 1),
                    (SELECT max(id) FROM event))""")
            .bind("before", before.toString()).execute();
    }

    long first() {
        return handle.createQuery("SELECT coalesce(min(id), 0) FROM event").mapTo(Long.class).one();
    }

    long last() {
        return handle.createQuery("SELECT coalesce(max(id), 0) FROM event").mapTo(Long.class).one();
    }

    private static LabEvent event(ResultSet row, StatementContext context) throws SQLException {
        long accepted = row.getLong("accepted_count");
        OptionalLong acceptedCount = row.wasNull() ? OptionalLong.empty() : OptionalLong.of(accepted);
        return new LabEvent(row.getLong("id"),
            StoredWords.find("kind of event", row.getString("type"), LabEvent.Type.values(), LabEvent.Type::word),
            Instant.parse(row.getString("recorded")), Optional.ofNullable(row.getString("sample")),
            Optional.ofNullable(row.getString("subject")), acceptedCount);
    }
}
