package surfeit.storage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.Collections;
import java.util.List;

/** Rows written by batches of inserts. Not thread-safe. */
final class InsertedTable implements TableWriter {
    private static final int ROWS_AT_ONCE = 256;

    private final PreparedStatement insert;
    private int waiting;

    InsertedTable(Connection connection, String table, List<String> columns) {
        try {
            this.insert = connection.prepareStatement("INSERT INTO " + table + " (" + String.join(", ", columns)
                + ") VALUES (" + String.join(", ", Collections.nCopies(columns.size(), "?")) + ")");
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }

    @Override
    public void add(Object[] row) throws SQLException {
        for (int i = 0; i < row.length; i++) {
            insert.setObject(i + 1, row[i]);
        }
        insert.addBatch();
        if (++waiting == ROWS_AT_ONCE) {
            send();
        }
    }

    private void send() throws SQLException {
        insert.executeBatch();
        waiting = 0;
    }

    @Override
    public void end() throws SQLException {
        send();
        insert.close();
    }
}
