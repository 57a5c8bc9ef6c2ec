package surfeit.storage;

import java.util.List;
import org.jdbi.v3.core.Handle;

/** What the database engines do each in their own way; all other SQL is the same for both. Stateless, thread-safe. */
interface Engine {

    /** Looks spots up and records them, in a sample and for an import. */
    SpotLots spotLots(Handle handle, long sample, long importNumber, long sampleRevision);

    /** The number of the next event: never given twice, and in the order of the commits. */
    long nextEvent(Handle handle);

    /** The number of the newest event there ever was; 0 where there was none. */
    long lastEvent(Handle handle);

    /** Goes on numbering events after this one. */
    void continueEventsAfter(Handle handle, long last);

    /** Writes whole rows, in the order of their columns, into an empty table. */
    TableWriter tableWriter(Handle handle, String table, List<String> columns);

    /** Names of the tables that hold the record, in the order in which rows refer to one another. */
    List<String> tables(Handle handle);
}
