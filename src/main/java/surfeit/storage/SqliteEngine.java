package surfeit.storage;

import java.util.List;
import org.jdbi.v3.core.Handle;

/** SQLite: one file, one writer. */
final class SqliteEngine implements Engine {
    static final Engine INSTANCE = new SqliteEngine();

    private SqliteEngine() {
    }

    @Override
    public SpotLots spotLots(Handle handle, long sample, long importNumber, long sampleRevision) {
        return new BatchedSpotLots(handle, sample, importNumber, sampleRevision);
    }

    @Override
    public long nextEvent(Handle handle) {
        return handle.createQuery("""
                SELECT coalesce((SELECT seq FROM sqlite_sequence WHERE name = 'event'), 0) + 1""")
            .mapTo(Long.class).one();
    }

    @Override
    public List<String> tables(Handle handle) {
        return handle.createQuery("""
                SELECT name FROM sqlite_master
                WHERE type = 'table' AND name NOT LIKE 'sqlite~_%' ESCAPE '~' ORDER BY rowid""")
            .mapTo(String.class).list();
    }
}
