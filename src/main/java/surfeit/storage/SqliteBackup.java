package surfeit.storage;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.SortedMap;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.core.DB;
import surfeit.lab.AuditChain;
import surfeit.lab.BackupReport;

/**
 * Copies the record into one file, also while a service works on it, and believes the copy only once it was
 * read again.
 *
 * <p>Page by page by the engine itself (SQLite's online backup), within one reading transaction: what is copied is what
 * was counted, and writers do not wait. Then the copy is opened, every page and reference is checked, the rows are
 * counted, and the audit is gone through. The file is for its owner only, and says itself what must be in it.
 */
public final class SqliteBackup {
    /** Pages copied in one go, 4 MiB; between them the engine lets others have the processor. */
    private static final int PAGES_AT_ONCE = 1024;

    private SqliteBackup() {
    }

    /**
     * Makes a backup of the record in a folder.
     *
     * @param target where to put it; nothing may be there
     * @throws StorageException where that cannot be, in words that say what to do
     */
    public static BackupReport take(Path folder, Path target, Instant when) {
        Path source = RecordFile.in(folder);
        Path absolute = target.toAbsolutePath();
        if (Files.exists(absolute)) {
            throw NewFile.exists(target);
        }
        try (NewFile file = NewFile.in(absolute.getParent())) {
            BackupReport report = write(source, file.path(), when);
            file.keepAs(absolute);
            return report;
        }
    }

    /** Fills an empty file. */
    static BackupReport write(Path source, Path file, Instant when) {
        SortedMap<String, Long> counts = copy(source, file);
        return BackupCheck.working(file, () -> {
            try (Handle copy = Jdbi.open(SqliteSettings.single(file))) {
                BackupNote.of(when, counts, AuditChain.check(new SqlReadAccess(copy), List.of())).write(copy);
            }
            return BackupCheck.check(file, file);
        });
    }

    private static SortedMap<String, Long> copy(Path source, Path file) {
        try (Handle record = RecordFile.open(source)) {
            return record.inTransaction(open -> {
                SortedMap<String, Long> counts = BackupNote.count(SqliteEngine.INSTANCE, open);
                BackupCheck.working(file, () -> {
                    copyPages(open.getConnection(), file);
                    return counts;
                });
                return counts;
            });
        } catch (RuntimeException e) {
            throw Failures.working(source, e);
        }
    }

    private static void copyPages(Connection from, Path file) {
        try {
            DB engine = from.unwrap(SQLiteConnection.class).getDatabase();
            int code = engine.backup("main", file.toString(), (remaining, total) -> { }, 0, 0, PAGES_AT_ONCE);
            if (code != SQLiteErrorCode.SQLITE_OK.code) {
                throw DB.newSQLException(code, "the copy stopped");
            }
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }
}
