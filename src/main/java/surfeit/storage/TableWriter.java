package surfeit.storage;

import java.sql.SQLException;

/** Takes the rows of one table. Not thread-safe. */
interface TableWriter {

    /** @param row a long, text, array of bytes or null for each column */
    void add(Object[] row) throws SQLException;

    /** Writes what is not written yet. */
    void end() throws SQLException;
}
