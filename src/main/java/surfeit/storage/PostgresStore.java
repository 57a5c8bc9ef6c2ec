package surfeit.storage;

import com.zaxxer.hikari.HikariDataSource;
import com.zaxxer.hikari.pool.HikariPool;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementBuilder;
import org.jdbi.v3.core.statement.StatementExceptions;
import surfeit.lab.Backup;
import surfeit.lab.Foreseen;
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
 * events and audit rows are numbered in the order of the commits, as in a file. As only one transaction of all can end at
 * a time, the server has no commits to put together; the small writes of one program share theirs instead. Readers never wait for writers and see
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
    private final WriteQueue queue;
    private volatile boolean closed;

    private PostgresStore(DatabaseAddress address, HikariDataSource writer, HikariDataSource readers,
                          int writesWaitingMax) {
        this.address = address;
        this.writer = writer;
        this.readers = readers;
        this.aside = PostgresSettings.aside(address);
        this.bell = new PostgresBell(address);
        this.writing = quiet(Jdbi.create(writer));
        writing.setStatementBuilderFactory(KeptStatements.factory());
        this.reading = quiet(Jdbi.create(readers));
        this.queue = new WriteQueue(new DatabaseWriting(), writesWaitingMax);
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
        return open(address, connections, WriteQueue.WAITING_MAX);
    }

    /**
     * As {@link #open(DatabaseAddress, int)}.
     *
     * @param writesWaitingMax most changes that may wait in this program to be recorded
     */
    public static PostgresStore open(DatabaseAddress address, int connections, int writesWaitingMax) {
        try {
            if (!PostgresForm.isCurrent(address)) {
                PostgresForm.migrate(address);
            }
            HikariDataSource writer = PostgresSettings.writer(address);
            try {
                return new PostgresStore(address, writer, PostgresSettings.readers(address, connections - NOT_READERS),
                    writesWaitingMax);
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
    public Listening onAppended(Runnable wake) {
        return bell.add(wake);
    }

    @Override
    public Optional<SharedTickets> sharedTickets() {
        return Optional.of(new PostgresTickets(address, aside));
    }

    @Override
    public int writesWaitingMax() {
        return queue.waitingMax();
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

    /** One connection, whose transactions take turns with those of other programs. */
    private final class DatabaseWriting implements Writing {
        private Optional<Turn> last = Optional.empty();

        /** A transaction that had the turn. Another connection may lead to a server that goes on from an earlier state. */
        private record Turn(StatementBuilder connection, String transaction) {
            Turn(Handle handle, String transaction) {
                this(handle.getStatementBuilder(), transaction);
            }
        }

        @Override
        public Engine engine() {
            return PostgresEngine.INSTANCE;
        }

        @Override
        public Jdbi connection() {
            return writing;
        }

        @Override
        public boolean takeTurn(Handle handle) {
            return last.equals(Optional.of(new Turn(handle, PostgresEngine.takeTurn(handle))));
        }

        @Override
        public void leaveTurn(Handle handle) {
            last = Optional.of(new Turn(handle, PostgresEngine.leaveTurn(handle)));
        }

        @Override
        public boolean isOfOneJob(Throwable failure) {
            return PostgresFailures.isOfValues(failure);
        }

        @Override
        public RuntimeException working(RuntimeException failure) {
            return PostgresFailures.working(address, failure);
        }

        @Override
        public RuntimeException committing(RuntimeException failure) {
            return PostgresFailures.committing(address, failure);
        }

        @Override
        public void committed() {
            bell.ring();
        }
    }

    private void requireOpen() {
        if (closed) {
            throw new ProblemException(Problem.SHUTTING_DOWN, "The record is closed.");
        }
    }

    /** Waits for the writes that wait or are under way, then closes the connections. */
    @Override
    public void close() {
        queue.close();
        synchronized (this) {
            if (!closed) {
                closed = true;
                bell.close();
                aside.close();
                readers.close();
                writer.close();
            }
        }
    }
}
