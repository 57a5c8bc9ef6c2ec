package surfeit.storage;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
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
        if (filter.types().isEmpty()) {
            return List.of();
        }
        StringBuilder sql = new StringBuilder("SELECT * FROM event WHERE id > ?");
        List<Object> values = new ArrayList<>(List.of(after));
        if (!filter.types().equals(EventFilter.ALL.types())) {
            sql.append(" AND type IN (").append(String.join(", ", Collections.nCopies(filter.types().size(), "?"))).append(")");
            filter.types().forEach(type -> values.add(type.word()));
        }
        filter.sample().ifPresent(sample -> {
            sql.append(" AND sample = ?");
            values.add(sample);
        });
        values.add(limit);
        return PlainSql.list(handle, sql.append(" ORDER BY id LIMIT ?").toString(), SqlEvents::event, values.toArray());
    }

    /** The beginning of the log up to the first event that is not old, so that no gap comes into being. */
    void forget(Instant before) {
        PlainSql.batch(handle, """
            DELETE FROM event WHERE id < coalesce(
                (SELECT id FROM event WHERE recorded >= ? ORDER BY id LIMIT 1),
                (SELECT max(id) FROM event))""", List.<Object[]>of(new Object[] {before.toString()}));
    }

    long first() {
        return PlainSql.number(handle, "SELECT coalesce(min(id), 0) FROM event");
    }

    long last() {
        return PlainSql.number(handle, "SELECT coalesce(max(id), 0) FROM event");
    }

    private static LabEvent event(ResultSet row) throws SQLException {
        long accepted = row.getLong("accepted_count");
        OptionalLong acceptedCount = row.wasNull() ? OptionalLong.empty() : OptionalLong.of(accepted);
        return new LabEvent(row.getLong("id"),
            StoredWords.find("kind of event", row.getString("type"), LabEvent.Type.values(), LabEvent.Type::word),
            Instant.parse(row.getString("recorded")), Optional.ofNullable(row.getString("sample")),
            Optional.ofNullable(row.getString("subject")), acceptedCount);
    }
}
