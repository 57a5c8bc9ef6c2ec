package surfeit.storage;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.postgresql.PGConnection;

/** Rows written by PostgreSQL's COPY, about a mebibyte at once. Not thread-safe. */
final class CopiedTable implements TableWriter {
    private static final int BYTES_AT_ONCE = 1 << 20;

    private final PGConnection connection;
    private final String copy;
    private CopiedRows rows = new CopiedRows();

    CopiedTable(Connection connection, String table, List<String> columns) {
        this.copy = "COPY " + table + " (" + String.join(", ", columns) + ") FROM STDIN (FORMAT binary)";
        try {
            this.connection = connection.unwrap(PGConnection.class);
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }

    @Override
    public void add(Object[] row) throws SQLException {
        rows.row(row.length);
        for (Object value : row) {
            add(value);
        }
        if (rows.length() > BYTES_AT_ONCE) {
            send();
        }
    }

    private void add(Object value) {
        if (value instanceof Number number) {
            rows.number(number.longValue());
        } else if (value instanceof byte[] bytes) {
            rows.bytes(bytes);
        } else {
            rows.text(Optional.ofNullable((String) value));
        }
    }

    private void send() throws SQLException {
        rows.send(connection, copy);
        rows = new CopiedRows();
    }

    @Override
    public void end() throws SQLException {
        send();
    }
}
