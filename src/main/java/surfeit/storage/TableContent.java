package surfeit.storage;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * Reads a whole table, and knows afterwards what it held: how many rows, and the sum of the SHA-256 of each, by which two
 * tables are compared whatever order their rows come in. Not thread-safe.
 */
final class TableContent {
    /** Rows fetched at once; few where one row may be a mebibyte. Judgement. */
    private static final int ROWS_AT_ONCE = 2_000;
    private static final int LARGE_ROWS_AT_ONCE = 8;
    private static final List<String> LARGE = List.of("bytes", "body");

    /** What a table held. */
    record Sum(long rows, List<Long> hashes) {
    }

    private final Handle handle;
    private final String table;
    private final List<String> columns;
    private final MessageDigest digest = sha256();
    private final ByteBuffer number = ByteBuffer.allocate(Long.BYTES);

    TableContent(Handle handle, String table) {
        this.handle = handle;
        this.table = table;
        this.columns = columns();
    }

    private List<String> columns() {
        try (Statement statement = handle.getConnection().createStatement();
             ResultSet none = statement.executeQuery("SELECT * FROM " + table + " WHERE 1 = 0")) {
            List<String> names = new ArrayList<>();
            for (int i = 1; i <= none.getMetaData().getColumnCount(); i++) {
                names.add(none.getMetaData().getColumnName(i));
            }
            return List.copyOf(names);
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }

    /** Names of its columns, which stand in the same order in both engines. */
    List<String> columnNames() {
        return columns;
    }

    /** Hands every row over. */
    Sum read(TableWriter to) {
        long[] sums = new long[4];
        long rows = 0;
        try (Statement statement = handle.getConnection().createStatement()) {
            statement.setFetchSize(columns.stream().anyMatch(LARGE::contains) ? LARGE_ROWS_AT_ONCE : ROWS_AT_ONCE);
            try (ResultSet found = statement.executeQuery("SELECT " + String.join(", ", columns) + " FROM " + table)) {
                Object[] row = new Object[columns.size()];
                for (; found.next(); rows++) {
                    for (int i = 0; i < row.length; i++) {
                        row[i] = found.getObject(i + 1);
                        add(row[i]);
                    }
                    ByteBuffer hash = ByteBuffer.wrap(digest.digest());
                    for (int i = 0; i < sums.length; i++) {
                        sums[i] += hash.getLong();
                    }
                    to.add(row);
                }
            }
            to.end();
            return new Sum(rows, List.of(sums[0], sums[1], sums[2], sums[3]));
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }

    /** Each value goes in with its kind and length in front, so that no value can pose as two. */
    private void add(Object value) {
        if (value == null) {
            digest.update((byte) 0);
        } else if (value instanceof Number whole) {
            digest.update((byte) 1);
            digest.update(number.putLong(0, whole.longValue()).array());
        } else {
            boolean text = value instanceof String;
            byte[] bytes = text ? ((String) value).getBytes(StandardCharsets.UTF_8) : (byte[]) value;
            digest.update((byte) (text ? 2 : 3));
            digest.update(number.putLong(0, bytes.length).array());
            digest.update(bytes);
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256.", e);
        }
    }
}
