package surfeit.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * All rows of a record, and the tables they stand in: written again by nothing but prepared statements in lots, in one
 * transaction that is written through, they cost the least that recording them can.
 */
final class CopiedRows {
    private static final int LOT = 256;
    private static final String TABLES = "SELECT name, sql FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"
        + " AND name NOT LIKE 'flyway_%' ORDER BY rowid";
    private static final String INDEXES = "SELECT sql FROM sqlite_master WHERE type IN ('index', 'trigger') AND sql IS NOT NULL"
        + " AND tbl_name NOT LIKE 'flyway_%'";

    private final List<String> schema = new ArrayList<>();
    private final Map<String, List<Object[]>> rows = new LinkedHashMap<>();

    static CopiedRows of(Path record) {
        CopiedRows copied = new CopiedRows();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + record);
             Statement statement = connection.createStatement()) {
            List<String> names = new ArrayList<>();
            try (ResultSet tables = statement.executeQuery(TABLES)) {
                while (tables.next()) {
                    names.add(tables.getString(1));
                    copied.schema.add(tables.getString(2));
                }
            }
            try (ResultSet indexes = statement.executeQuery(INDEXES)) {
                while (indexes.next()) {
                    copied.schema.add(indexes.getString(1));
                }
            }
            for (String name : names) {
                copied.rows.put(name, rows(statement, name));
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        return copied;
    }

    private static List<Object[]> rows(Statement statement, String table) throws SQLException {
        List<Object[]> all = new ArrayList<>();
        try (ResultSet found = statement.executeQuery("SELECT * FROM \"" + table + "\"")) {
            int columns = found.getMetaData().getColumnCount();
            while (found.next()) {
                Object[] row = new Object[columns];
                for (int i = 0; i < columns; i++) {
                    row[i] = found.getObject(i + 1);
                }
                all.add(row);
            }
        }
        return all;
    }

    /** Seconds to write all rows into a new file. */
    double write(Path file) throws IOException, SQLException {
        for (String end : List.of("", "-wal", "-shm")) {
            Files.deleteIfExists(Path.of(file + end));
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
             Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA journal_mode = WAL");
            statement.execute("PRAGMA synchronous = FULL");
            for (String part : schema) {
                statement.execute(part);
            }
            connection.setAutoCommit(false);
            long start = System.nanoTime();
            for (Map.Entry<String, List<Object[]>> table : rows.entrySet()) {
                insert(connection, table.getKey(), table.getValue());
            }
            connection.commit();
            return (System.nanoTime() - start) / 1e9;
        }
    }

    private static void insert(Connection connection, String table, List<Object[]> rows) throws SQLException {
        if (rows.isEmpty()) {
            return;
        }
        String marks = String.join(",", Collections.nCopies(rows.get(0).length, "?"));
        try (PreparedStatement insert = connection.prepareStatement("INSERT INTO \"" + table + "\" VALUES (" + marks + ")")) {
            int waiting = 0;
            for (Object[] row : rows) {
                for (int i = 0; i < row.length; i++) {
                    insert.setObject(i + 1, row[i]);
                }
                insert.addBatch();
                if (++waiting % LOT == 0) {
                    insert.executeBatch();
                }
            }
            insert.executeBatch();
        }
    }
}
