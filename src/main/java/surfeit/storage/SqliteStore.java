package surfeit.storage;

import com.zaxxer.hikari.HikariDataSource;
import java.io.File;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Function;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementBuilderFactory;
import org.jdbi.v3.core.statement.StatementExceptions;
import surfeit.lab.Backup;
import surfeit.lab.BackupReport;
import surfeit.lab.Foreseen;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.ReadAccess;
import surfeit.lab.SharedTickets;
import surfeit.lab.WriteAccess;
import surfeit.statistics.NumbersAside;

/**
 * The record in one SQLite file, {@code surfeit.db} in the data folder. Thread-safe.
 *
 * <p>Writers take turns, first come first served; small writes that wait at the same time share a commit. A write that
 * has returned is on the disk. Readers never wait for writers and see the state that held when their first question was
 * asked.
 */
public final class SqliteStore implements RecordStore {
    /** Most reads at the same time; each holds a connection with its own page cache. Judgement. */
    private static final int READERS = 8;

    private final DataFolder folder;
    private final HikariDataSource writer;
    private final HikariDataSource readers;
    private final Jdbi writing;
    private final Jdbi reading;
    private final Checkpoints checkpoints;
    private final WriteQueue queue;
    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();
    private volatile boolean closed;

    private SqliteStore(DataFolder folder, boolean current, int writesWaitingMax) {
        this.folder = folder;
        this.writer = SqliteSettings.writer(folder.file());
        try {
            if (!current) {
                migrate();
            }
            this.readers = SqliteSettings.readers(folder.file(), READERS);
        } catch (RuntimeException e) {
            writer.close();
            throw e;
        }
        this.writing = quiet(Jdbi.create(writer));
        this.reading = quiet(Jdbi.create(readers));
        StatementBuilderFactory statements = KeptStatements.factory();
        writing.setStatementBuilderFactory(statements);
        reading.setStatementBuilderFactory(statements);
        this.checkpoints = new Checkpoints(folder.file());
        this.queue = new WriteQueue(new FileWriting(), writesWaitingMax);
    }

    /** What was measured has no place in a log: failures name neither statements nor the values that went in. */
    private static Jdbi quiet(Jdbi jdbi) {
        jdbi.getConfig(StatementExceptions.class).setMessageRendering(StatementExceptions.MessageRendering.NONE);
        return jdbi;
    }

    /**
     * Opens the record in a folder, making folder and file where they are missing.
     *
     * @throws StorageException where that cannot be, in words that say what to do
     */
    public static SqliteStore open(Path folder) {
        return open(folder, WriteQueue.WAITING_MAX);
    }

    /**
     * As {@link #open(Path)}.
     *
     * @param writesWaitingMax most changes that may wait to be recorded
     */
    public static SqliteStore open(Path folder, int writesWaitingMax) {
        DataFolder claimed = DataFolder.claim(folder);
        try {
            claimed.makeFile();
            return new SqliteStore(claimed, FileCheck.isCurrent(claimed.file()), writesWaitingMax);
        } catch (StorageException | ProblemException e) {
            claimed.close();
            throw e;
        } catch (RuntimeException e) {
            claimed.close();
            throw Failures.opening(claimed.file(), e);
        }
    }

    private void migrate() {
        migrate(folder.file(), writer);
    }

    static void migrate(Path file, DataSource source) {
        try {
            Flyway.configure().dataSource(source).locations("classpath:db/migration/sqlite").load().migrate();
        } catch (FlywayException e) {
            throw Failures.opening(file, e);
        }
    }

    @Override
    public <T> T read(Function<ReadAccess, T> work) {
        requireOpen();
        try (Handle handle = reading.open()) {
            return handle.inTransaction(open -> work.apply(new SqlReadAccess(open)));
        } catch (RuntimeException e) {
            throw Failures.working(folder.file(), e);
        }
    }

    @Override
    public <T> T write(Function<WriteAccess, T> work) {
        return queue.await(WriteJob.Kind.ALONE, work);
    }

    @Override
    public <T> CompletableFuture<T> writeShared(Foreseen foreseen, Function<WriteAccess, T> work) {
        return queue.add(new WriteJob<>(foreseen, work));
    }

    @Override
    public <T> T rehearse(Function<WriteAccess, T> work) {
        return queue.await(WriteJob.Kind.REHEARSED, work);
    }

    @Override
    public NumbersAside numbersAside() {
        return NumbersFile.temporary();
    }

    /** The file, and what was written since and stands beside it still. */
    @Override
    public long byteCount() {
        return file().toFile().length() + new File(file() + "-wal").length();
    }

    @Override
    public Listening onAppended(Runnable wake) {
        listeners.add(wake);
        return () -> listeners.remove(wake);
    }

    @Override
    public int writesWaitingMax() {
        return queue.waitingMax();
    }

    @Override
    public boolean isShared() {
        return false;
    }

    @Override
    public Optional<SharedTickets> sharedTickets() {
        return Optional.empty();
    }

    @Override
    public Backup backup(Instant when) {
        requireOpen();
        try (NewFile file = NewFile.in(folder.path())) {
            BackupReport report = SqliteBackup.write(folder.file(), file.path(), when);
            return new Backup(report, file.openForReading());
        }
    }

    /** One connection, and listeners in this program only. */
    private final class FileWriting implements Writing {
        @Override
        public Engine engine() {
            return SqliteEngine.INSTANCE;
        }

        @Override
        public Jdbi connection() {
            return writing;
        }

        @Override
        public boolean takeTurn(Handle handle) {
            return true; // the transaction holds the file from its beginning, and the folder is this program's
        }

        @Override
        public void leaveTurn(Handle handle) {
            // it ends with the transaction
        }

        @Override
        public boolean isOfOneJob(Throwable failure) {
            return Failures.isOfValues(failure);
        }

        @Override
        public RuntimeException working(RuntimeException failure) {
            return Failures.working(folder.file(), failure);
        }

        @Override
        public RuntimeException committing(RuntimeException failure) {
            return failure;
        }

        @Override
        public void committed() {
            listeners.forEach(Runnable::run);
            checkpoints.committed();
        }
    }

    private void requireOpen() {
        if (closed) {
            throw new ProblemException(Problem.SHUTTING_DOWN, "The record is closed.");
        }
    }

    /** The file itself. */
    public Path file() {
        return folder.file();
    }

    /** Waits for the writes that wait or are under way, then closes the file and gives the folder back. */
    @Override
    public void close() {
        queue.close();
        synchronized (this) {
            if (closed) {
                return;
            }
            closed = true;
            checkpoints.close();
            readers.close();
            writer.close();
            folder.close();
        }
    }
}
