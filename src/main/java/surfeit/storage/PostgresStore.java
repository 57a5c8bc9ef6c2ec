package surfeit.storage;

import com.zaxxer.hikari.HikariDataSource;
import com.zaxxer.hikari.pool.HikariPool;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementExceptions;
import surfeit.lab.Backup;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.ReadAccess;
import surfeit.lab.SharedTickets;
import surfeit.lab.WriteAccess;
import surfeit.statistics.NumbersAside;

/**
 * The record in a PostgreSQL database, which any number of programs may use at the same time. Thread-safe.
 *
 * <p>Writers take turns, those of other programs too: the turn is a row that a writer holds locked until its commit. So
 * events and audit rows are numbered in the order of the commits, as in a file. Readers never wait for writers and see
 * the state that held when their first question was asked. A connection that broke is replaced at the next request.
 */
public final class PostgresStore implements RecordStore {
    /** Connections of one program that are not for reading: one writes, one hears of events, one is for tickets. */
    private static final int NOT_READERS = 3;

    private final DatabaseAddress address;
    private final HikariDataSource writer;
    private final HikariDataSource readers;
    private final HikariDataSource aside;
    private final PostgresBell bell;
    private final Jdbi writing;
    private final Jdbi reading;
    private final ReentrantLock turn = new ReentrantLock(true);
    private volatile boolean closed;

    private PostgresStore(DatabaseAddress address, HikariDataSource writer, HikariDataSource readers) {
        this.address = address;
        this.writer = writer;
        this.readers = readers;
        this.aside = PostgresSettings.aside(address);
        this.bell = new PostgresBell(address);
        this.writing = quiet(Jdbi.create(writer));
        this.reading = quiet(Jdbi.create(readers));
    }

    /** What was measured has no place in a log: failures name neither statements nor the values that went in. */
    private static Jdbi quiet(Jdbi jdbi) {
        jdbi.getConfig(StatementExceptions.class).setMessageRendering(StatementExceptions.MessageRendering.NONE);
        return jdbi;
    }

    /**
     * Opens the record in a database, making its tables where they are missing.
     *
     * @param connections most connections this program holds open
     * @throws StorageException where that cannot be, in words that say what to do
     */
    public static PostgresStore open(DatabaseAddress address, int connections) {
        try {
            if (!PostgresForm.isCurrent(address)) {
                PostgresForm.migrate(address);
            }
            HikariDataSource writer = PostgresSettings.writer(address);
            try {
                return new PostgresStore(address, writer, PostgresSettings.readers(address, connections - NOT_READERS));
            } catch (RuntimeException e) {
                writer.close();
                throw e;
            }
        } catch (HikariPool.PoolInitializationException e) {
            throw PostgresFailures.opening(address, e);
        }
    }

    @Override
    public <T> T read(Function<ReadAccess, T> work) {
        requireOpen();
        try (Handle handle = reading.open()) {
            return handle.inTransaction(open -> work.apply(new SqlReadAccess(open)));
        } catch (RuntimeException e) {
            throw PostgresFailures.working(address, e);
        }
    }

    @Override
    public <T> T write(Function<WriteAccess, T> work) {
        T done = inTurn(work, (handle, result) -> {
            try {
                handle.commit();
                return result;
            } catch (RuntimeException e) {
                throw PostgresFailures.committing(address, e);
            }
        });
        bell.ring();
        return done;
    }

    @Override
    public Listening onAppended(Runnable wake) {
        return bell.add(wake);
    }

    @Override
    public Optional<SharedTickets> sharedTickets() {
        return Optional.of(new PostgresTickets(address, aside));
    }

    @Override
    public <T> T rehearse(Function<WriteAccess, T> work) {
        return inTurn(work, (handle, result) -> {
            handle.rollback();
            return result;
        });
    }

    @Override
    public boolean isShared() {
        return true;
    }

    @Override
    public NumbersAside numbersAside() {
        return NumbersFile.temporary();
    }

    @Override
    public long byteCount() {
        return read(access -> ((SqlReadAccess) access).handle
            .createQuery("SELECT pg_database_size(current_database())").mapTo(Long.class).one());
    }

    @Override
    public Backup backup(Instant when) {
        return read(access -> PostgresBackup.of(((SqlReadAccess) access).handle, when));
    }

    private <T> T inTurn(Function<WriteAccess, T> work, BiFunction<Handle, T, T> end) {
        if (turn.isHeldByCurrentThread()) {
            throw new IllegalStateException("A write within a write must use the access that is already open.");
        }
        turn.lock();
        try {
            requireOpen();
            try (Handle handle = writing.open()) {
                return inTransaction(handle, work, end);
            } catch (RuntimeException e) {
                throw PostgresFailures.working(address, e);
            }
        } finally {
            turn.unlock();
        }
    }

    private static <T> T inTransaction(Handle handle, Function<WriteAccess, T> work, BiFunction<Handle, T, T> end) {
        handle.begin();
        try {
            PostgresEngine.takeTurn(handle);
            return end.apply(handle, work.apply(new SqlWriteAccess(handle, PostgresEngine.INSTANCE)));
        } catch (RuntimeException e) {
            takeBack(handle, e);
            throw e;
        }
    }

    private static void takeBack(Handle handle, RuntimeException cause) {
        try {
            if (handle.isInTransaction()) {
                handle.rollback();
            }
        } catch (RuntimeException e) {
            cause.addSuppressed(e);
        }
    }

    private void requireOpen() {
        if (closed) {
            throw new ProblemException(Problem.SHUTTING_DOWN, "The record is closed.");
        }
    }

    /** Waits for the write under way, then closes the connections. */
    @Override
    public void close() {
        turn.lock();
        try {
            if (!closed) {
                closed = true;
                bell.close();
                aside.close();
                readers.close();
                writer.close();
            }
        } finally {
            turn.unlock();
        }
    }
}
