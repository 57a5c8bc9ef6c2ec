package surfeit.storage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.sqlite.SQLiteConfig;

/** Looks at the file before anything is written to it: is it ours, whole, and not of a newer program. */
final class FileCheck {
    /** The newest form of the record this program knows: the highest number of its migrations. */
    static final int SCHEMA = 5;
    /**
     * Largest file that is checked page by page when it is opened, in bytes. At about 1 GB/s this keeps the check below
     * half a second (judgement); larger ones are still checked by the engine as their pages are read.
     */
    private static final long CHECKED_BYTES_MAX = 256L << 20;
    static final String HISTORY = "flyway_schema_history";

    private FileCheck() {
    }

    /** True where the file has the present form already. @throws StorageException where it cannot be used */
    static boolean isCurrent(Path file) {
        try {
            if (!Files.exists(file) || Files.size(file) == 0) {
                return false;
            }
            try (Connection connection =
                     SqliteSettings.dataSource(file, SQLiteConfig.TransactionMode.DEFERRED).getConnection();
                 Statement statement = connection.createStatement()) {
                requireOurs(file, statement);
                long found = requireKnownSchema(file, statement);
                if (Files.size(file) <= CHECKED_BYTES_MAX) {
                    requireWhole(file, statement);
                }
                return found == SCHEMA;
            }
        } catch (SQLException e) {
            throw Failures.opening(file, e);
        } catch (IOException e) {
            throw new StorageException("The file " + file + " cannot be read: " + e.getMessage() + ".", e);
        }
    }

    private static void requireOurs(Path file, Statement statement) throws SQLException {
        boolean empty = number(statement, "SELECT count(*) FROM sqlite_master") == 0;
        if (!empty && number(statement, "SELECT count(*) FROM sqlite_master WHERE name = '" + HISTORY + "'") == 0) {
            throw new StorageException("The file " + file + " is a database of another program. Choose another folder"
                + " with --data.");
        }
    }

    private static long requireKnownSchema(Path file, Statement statement) throws SQLException {
        if (number(statement, "SELECT count(*) FROM sqlite_master WHERE name = '" + HISTORY + "'") == 0) {
            return 0;
        }
        long found = number(statement, "SELECT coalesce(max(CAST(version AS INTEGER)), 0) FROM " + HISTORY);
        if (found > SCHEMA) {
            throw new StorageException("The file " + file + " was written by a newer program: its form is " + found
                + ", this program knows up to " + SCHEMA
                + ". Run the newer program, or restore a backup made with this one.");
        }
        return found;
    }

    private static void requireWhole(Path file, Statement statement) throws SQLException {
        try (ResultSet rows = statement.executeQuery("PRAGMA quick_check(1)")) {
            String answer = rows.next() ? rows.getString(1) : "no answer";
            if (!answer.equals("ok")) {
                throw Failures.damaged(file, answer);
            }
        }
    }

    private static long number(Statement statement, String query) throws SQLException {
        try (ResultSet rows = statement.executeQuery(query)) {
            return rows.next() ? rows.getLong(1) : 0;
        }
    }
}
