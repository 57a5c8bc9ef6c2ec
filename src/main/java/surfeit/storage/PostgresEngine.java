package surfeit.storage;

import java.util.List;
import org.jdbi.v3.core.Handle;

/** PostgreSQL: a server, used by any number of programs at the same time, which write in turn. */
final class PostgresEngine implements Engine {
    static final Engine INSTANCE = new PostgresEngine();

    private PostgresEngine() {
    }

    /** Waits for the turn to write; it ends with the transaction. */
    static void takeTurn(Handle handle) {
        handle.createQuery("SELECT last_event FROM turn WHERE id = 1 FOR UPDATE").mapTo(Long.class).one();
    }

    @Override
    public SpotLots spotLots(Handle handle, long sample, long importNumber, long sampleRevision) {
        return new CopiedSpotLots(handle, sample, importNumber, sampleRevision);
    }

    /** Whoever listens hears of it at the commit, however many events there are, and nothing where it is taken back. */
    @Override
    public long nextEvent(Handle handle) {
        return handle.createQuery("UPDATE turn SET last_event = last_event + 1 WHERE id = 1 RETURNING last_event, pg_notify('"
                + PostgresBell.CHANNEL + "', '')").map((row, context) -> row.getLong(1)).one();
    }

    @Override
    public long lastEvent(Handle handle) {
        return handle.createQuery("SELECT last_event FROM turn WHERE id = 1").mapTo(Long.class).one();
    }

    @Override
    public void continueEventsAfter(Handle handle, long last) {
        handle.execute("UPDATE turn SET last_event = ? WHERE id = 1", last);
    }

    @Override
    public TableWriter tableWriter(Handle handle, String table, List<String> columns) {
        return new CopiedTable(handle.getConnection(), table, columns);
    }

    @Override
    public List<String> tables(Handle handle) {
        return handle.createQuery("""
                SELECT relname FROM pg_class
                WHERE relnamespace = current_schema()::regnamespace AND relkind = 'r'
                    AND relname NOT IN ('turn', 'event_ticket', 'flyway_schema_history')
                ORDER BY oid""")
            .mapTo(String.class).list();
    }
}
