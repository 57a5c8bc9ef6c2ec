package surfeit.storage;

import java.util.List;
import org.jdbi.v3.core.Handle;
import surfeit.lab.Foreseen;

/** SQLite: one file, one writer. */
final class SqliteEngine implements Engine {
    static final Engine INSTANCE = new SqliteEngine();

    private SqliteEngine() {
    }

    @Override
    public void foresee(Handle handle, WriteMemory memory, List<Foreseen> all) {
        // a question to a file costs no more than its answer
    }

    @Override
    public SpotLots spotLots(Handle handle, long sample, long importNumber, long sampleRevision) {
        return new BatchedSpotLots(handle, sample, importNumber, sampleRevision);
    }

    @Override
    public long lastEvent(Handle handle) {
        return PlainSql.number(handle, "SELECT coalesce((SELECT seq FROM sqlite_sequence WHERE name = 'event'), 0)");
    }

    @Override
    public void continueEventsAfter(Handle handle, long last) {
        handle.execute("DELETE FROM sqlite_sequence WHERE name = 'event'");
        handle.execute("INSERT INTO sqlite_sequence (name, seq) VALUES ('event', ?)", last);
    }

    @Override
    public TableWriter tableWriter(Handle handle, String table, List<String> columns) {
        return new InsertedTable(handle.getConnection(), table, columns);
    }

    @Override
    public List<String> tables(Handle handle) {
        return handle.createQuery("""
                SELECT name FROM sqlite_master
                WHERE type = 'table' AND name NOT LIKE 'sqlite~_%' ESCAPE '~' AND name <> 'flyway_schema_history'
                ORDER BY rowid""")
            .mapTo(String.class).list();
    }
}
