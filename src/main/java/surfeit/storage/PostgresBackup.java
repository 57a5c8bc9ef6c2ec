package surfeit.storage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import surfeit.lab.AuditChain;
import surfeit.lab.Backup;
import surfeit.lab.BackupReport;

/**
 * Copies the record of a database into one file, the same kind of file that a data folder is backed up to: it can be
 * restored into a folder, and moved from there to a database. Services may go on meanwhile; the copy is of one moment.
 */
public final class PostgresBackup {
    private PostgresBackup() {
    }

    /**
     * Makes a backup of the record in a database.
     *
     * @param target where to put it; nothing may be there
     * @throws StorageException where that cannot be, in words that say what to do
     */
    public static BackupReport take(DatabaseAddress address, Path target, Instant when) {
        Path absolute = target.toAbsolutePath();
        if (Files.exists(absolute)) {
            throw NewFile.exists(target);
        }
        try (NewFile file = NewFile.in(absolute.getParent())) {
            BackupReport report = RecordDatabase.read(address,
                access -> write(((SqlReadAccess) access).handle, file.path(), when));
            file.keepAs(absolute);
            return report;
        }
    }

    /** Makes one in the folder for temporary files, to be read once. */
    static Backup of(Handle source, Instant when) {
        try (NewFile file = NewFile.in(temporary())) {
            BackupReport report = write(source, file.path(), when);
            return new Backup(report, file.openForReading());
        }
    }

    private static Path temporary() {
        try {
            return Files.createDirectories(Path.of(System.getProperty("java.io.tmpdir")));
        } catch (IOException e) {
            throw new StorageException("The folder for temporary files cannot be made: " + e.getMessage() + ".", e);
        }
    }

    private static BackupReport write(Handle source, Path file, Instant when) {
        source.execute("SET LOCAL idle_in_transaction_session_timeout = 0");    // the copy is read again meanwhile
        return BackupCheck.working(file, () -> {
            RecordMove.fill(file, PostgresEngine.INSTANCE, source);
            try (Handle copy = Jdbi.open(SqliteSettings.single(file))) {
                BackupNote.of(when, BackupNote.count(SqliteEngine.INSTANCE, copy),
                    AuditChain.check(new SqlReadAccess(copy), List.of())).write(copy);
            }
            return BackupCheck.check(file, file);
        });
    }
}
