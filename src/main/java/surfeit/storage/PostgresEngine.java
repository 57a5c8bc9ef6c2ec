package surfeit.storage;

import java.util.List;
import org.jdbi.v3.core.Handle;
import surfeit.lab.Foreseen;

/** PostgreSQL: a server, used by any number of programs at the same time, which write in turn. */
final class PostgresEngine implements Engine {
    static final Engine INSTANCE = new PostgresEngine();

    /** Those that were forgotten count, too. */
    private static final String LAST_EVENT = "greatest(last_event, (SELECT coalesce(max(id), 0) FROM event))";

    private PostgresEngine() {
    }

    /** Waits for the turn to write; it ends with the transaction. @return the transaction that had it before */
    static String takeTurn(Handle handle) {
        return PlainSql.find(handle, "SELECT xmin FROM turn WHERE id = 1 FOR UPDATE", row -> row.getString(1))
            .orElseThrow();
    }

    /**
     * Leaves in the turn who had it, and how far the events go; the last thing before the commit. Whoever listens hears of
     * it at the commit, and nothing where it is taken back.
     *
     * @return this transaction, as the next one finds it
     */
    static String leaveTurn(Handle handle) {
        String sql = "UPDATE turn SET last_event = " + LAST_EVENT + " WHERE id = 1 RETURNING xmin, pg_notify('"
            + PostgresBell.CHANNEL + "', '')";
        return PlainSql.find(handle, sql, row -> row.getString(1)).orElseThrow();
    }

    @Override
    public void foresee(Handle handle, WriteMemory memory, List<Foreseen> all) {
        new PostgresForesight(handle, memory).lookUp(all);
    }

    @Override
    public SpotLots spotLots(Handle handle, long sample, long importNumber, long sampleRevision) {
        return new CopiedSpotLots(handle, sample, importNumber, sampleRevision);
    }

    @Override
    public long lastEvent(Handle handle) {
        return PlainSql.number(handle, "SELECT " + LAST_EVENT + " FROM turn WHERE id = 1");
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
