package surfeit.storage;

import java.util.List;
import org.jdbi.v3.core.Handle;
import surfeit.lab.Foreseen;

/** What the database engines do each in their own way; all other SQL is the same for both. Stateless, thread-safe. */
interface Engine {

    /** Looks up what jobs will ask, where that costs less than to ask for each by itself. */
    void foresee(Handle handle, WriteMemory memory, List<Foreseen> all);

    /** Looks spots up and records them, in a sample and for an import. */
    SpotLots spotLots(Handle handle, long sample, long importNumber, long sampleRevision);

    /** The number of the newest event there ever was, this transaction's own among them; 0 where there was none. */
    long lastEvent(Handle handle);

    /** Goes on numbering events after this one. */
    void continueEventsAfter(Handle handle, long last);

    /** Writes whole rows, in the order of their columns, into an empty table. */
    TableWriter tableWriter(Handle handle, String table, List<String> columns);

    /** Names of the tables that hold the record, in the order in which rows refer to one another. */
    List<String> tables(Handle handle);
}
