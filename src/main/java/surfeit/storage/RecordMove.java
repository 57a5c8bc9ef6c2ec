package surfeit.storage;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteConfig;
import surfeit.lab.AuditCheck;

/**
 * Moves a whole record from a folder to a database or back, counted and checked. All of it arrives or nothing; nothing is
 * overwritten, and the record it came from stays as it was. No service may run on either side meanwhile.
 */
public final class RecordMove {
    private RecordMove() {
    }

    /** @throws StorageException where that cannot be, in words that say what to do */
    public static MoveReport toDatabase(Path folder, DatabaseAddress address, Instant when) {
        requireCurrent(folder);
        try (DataFolder claimed = DataFolder.claim(folder);
             Handle source = Jdbi.open(SqliteSettings.dataSource(claimed.file(), SQLiteConfig.TransactionMode.DEFERRED))) {
            source.execute("PRAGMA query_only = ON");
            if (!PostgresForm.isCurrent(address)) {
                PostgresForm.migrate(address);
            }
            return inTurn(address, target -> {
                MoveReport report = source.inTransaction(open ->
                    new RecordCopy(SqliteEngine.INSTANCE, open, PostgresEngine.INSTANCE, target).run());
                note(report, target, when);
                return report;
            });
        } catch (RuntimeException e) {
            throw Failures.working(folder.resolve(DataFolder.FILE_NAME), e);
        }
    }

    private static void requireCurrent(Path folder) {
        Path file = RecordFile.in(folder);
        if (!Files.exists(file) || !FileCheck.isCurrent(file)) {
            throw new StorageException("The record in the data folder " + folder + " has the form of an older program."
                + " Start the service on it once; then move it.");
        }
    }

    /** @throws StorageException where that cannot be, in words that say what to do */
    public static MoveReport toFolder(DatabaseAddress address, Path folder, Instant when) {
        RecordDatabase.requireRecord(address);
        SqliteRestore.refuseUnlessEmpty(folder);
        try (DataFolder claimed = DataFolder.claim(folder); NewFile file = NewFile.in(folder)) {
            SqliteRestore.refuseUnlessEmpty(folder);
            MoveReport report = inTurn(address, source -> write(source, file.path(), when));
            file.keepAs(claimed.file());
            return report;
        }
    }

    private static MoveReport write(Handle source, Path file, Instant when) {
        return BackupCheck.working(file, () -> {
            MoveReport report = fill(file, PostgresEngine.INSTANCE, source);
            try (Handle target = Jdbi.open(SqliteSettings.single(file))) {
                note(report, target, when);
            }
            return report;
        });
    }

    /** Fills an empty file. */
    static MoveReport fill(Path file, Engine from, Handle source) {
        SqliteStore.migrate(file, SqliteSettings.single(file));
        try (Handle handle = Jdbi.open(SqliteSettings.single(file))) {
            return handle.inTransaction(target -> new RecordCopy(from, source, SqliteEngine.INSTANCE, target).run());
        }
    }

    /** The copy notes how the audit ended when it was made, so that a later check shows a cut below that. */
    private static void note(MoveReport report, Handle target, Instant when) {
        new BackupNote(when, report.rowCounts(), report.audit().head(),
            report.audit().broken().map(AuditCheck.Broken::number)).write(target);
        BackupNote.markRestored(target, when);
    }

    /** Holds the turn to write, so that nobody else does meanwhile. */
    private static MoveReport inTurn(DatabaseAddress address, Function<Handle, MoveReport> work) {
        try (Handle handle = RecordDatabase.open(address)) {
            handle.setReadOnly(false);
            handle.execute("SET idle_in_transaction_session_timeout = 0");
            return handle.inTransaction(open -> {
                PostgresEngine.takeTurn(open);
                requireNoService(address, open);
                return work.apply(open);
            });
        } catch (RuntimeException e) {
            throw PostgresFailures.working(address, e);
        }
    }

    private static void requireNoService(DatabaseAddress address, Handle handle) {
        long connections = handle.createQuery("""
                SELECT count(*) FROM pg_stat_activity
                WHERE datname = current_database() AND application_name = :service AND pid <> pg_backend_pid()""")
            .bind("service", PostgresSettings.SERVICE).mapTo(Long.class).one();
        if (connections > 0) {
            throw new StorageException("A service runs on the database " + address + " (" + connections
                + " connections). Stop it first: what it recorded from now on would be missing on the other side.");
        }
    }
}
