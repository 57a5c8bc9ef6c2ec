package surfeit.storage;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.Store;
import surfeit.lab.WriteAccess;

/**
 * The one writer of a record: does the jobs it is given in the order it was given them, and tells what came of each once
 * the commit that holds it is on the disk. Thread-safe.
 *
 * <p>Small jobs that wait at the same time share a transaction, and so one commit. Each runs within a savepoint of its
 * own: one that fails takes back just itself. A job that may take long has a transaction of its own, so that those
 * before it need not wait for it. Who finds the queue full is refused at once.
 */
final class WriteQueue implements AutoCloseable {
    /** Jobs that may wait. Judgement: some tenths of a second of work, some megabytes of small uploads. */
    static final int WAITING_MAX = 1024;
    /** Most jobs that share a commit. Judgement: the commit costs little then beside its jobs. */
    private static final int SHARED_MAX = 64;
    /** How old a transaction may be that a further job joins. Judgement: nobody notices a wait as long as this. */
    private static final long SHARED_NANOS = 25_000_000;

    private final Writing writing;
    private final int waitingMax;
    private final WriteMemory memory = new WriteMemory();
    private final Queue<WriteJob<?>> waiting = new ArrayDeque<>();
    private final Thread writer = new Thread(this::work, "surfeit-writer");
    private boolean closed;

    WriteQueue(Writing writing, int waitingMax) {
        this.writing = writing;
        this.waitingMax = waitingMax;
        writer.setDaemon(true);
        writer.start();
    }

    int waitingMax() {
        return waitingMax;
    }

    /** Has work done. @throws ProblemException overloaded, shutting-down */
    synchronized <T> CompletableFuture<T> add(WriteJob.Kind kind, Function<WriteAccess, T> work) {
        if (closed) {
            throw new ProblemException(Problem.SHUTTING_DOWN, "The record is closed.");
        }
        if (waiting.size() >= waitingMax) {
            throw new ProblemException(Problem.OVERLOADED, waitingMax + " changes wait to be recorded already.")
                .withSetting(Store.WAITING_SETTING);
        }
        WriteJob<T> job = new WriteJob<>(kind, work);
        waiting.add(job);
        notifyAll();
        return job.answer();
    }

    /** Has work done and waits for it. @throws ProblemException overloaded, shutting-down, or what the work throws */
    <T> T await(WriteJob.Kind kind, Function<WriteAccess, T> work) {
        if (Thread.currentThread() == writer) {
            throw new IllegalStateException("A write within a write must use the access that is already open.");
        }
        try {
            return add(kind, work).join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof RuntimeException failure) {
                throw failure;
            }
            if (e.getCause() instanceof Error failure) {
                throw failure;
            }
            throw e;
        }
    }

    private void work() {
        for (Optional<WriteJob<?>> job = next(); job.isPresent(); job = next()) {
            List<WriteJob<?>> jobs = new ArrayList<>(List.of(job.get()));
            try {
                inTransaction(jobs);
            } catch (RuntimeException | Error e) {
                jobs.forEach(each -> each.fail(e));
            }
            jobs.forEach(WriteJob::tell);
        }
    }

    /** The next job, once there is one; none once the queue is closed and empty. */
    private synchronized Optional<WriteJob<?>> next() {
        while (waiting.isEmpty() && !closed) {
            try {
                wait();
            } catch (InterruptedException e) {
                continue; // only a closed queue ends its writer
            }
        }
        return Optional.ofNullable(waiting.poll());
    }

    private synchronized Optional<WriteJob<?>> nextToShare() {
        boolean shares = !waiting.isEmpty() && waiting.peek().kind() == WriteJob.Kind.SHARED;
        return shares ? Optional.of(waiting.remove()) : Optional.empty();
    }

    /** @param jobs the first job, and those that came to share its transaction */
    private void inTransaction(List<WriteJob<?>> jobs) {
        try (Handle handle = writing.connection().open()) {
            try {
                handle.begin();
                writing.takeTurn(handle);
                if (writing.isShared()) {
                    memory.clear();
                }
                WriteJob<?> first = jobs.get(0);
                first.run(new SqlWriteAccess(handle, writing.engine(), memory));
                if (first.kind() == WriteJob.Kind.REHEARSED) {
                    memory.clear();
                    handle.rollback();
                    return;
                }
                if (first.kind() == WriteJob.Kind.SHARED) {
                    share(handle, jobs);
                }
            } catch (RuntimeException | Error e) {
                takeBack(handle, e);
                throw e;
            }
            commit(handle);
        } catch (RuntimeException e) {
            throw writing.working(e);
        }
    }

    private void share(Handle handle, List<WriteJob<?>> jobs) {
        long start = System.nanoTime();
        while (jobs.size() < SHARED_MAX && System.nanoTime() - start < SHARED_NANOS) {
            Optional<WriteJob<?>> next = nextToShare();
            if (next.isEmpty()) {
                return;
            }
            jobs.add(next.get());
            runWithin(handle, next.get());
        }
    }

    private void runWithin(Handle handle, WriteJob<?> job) {
        PlainSql.update(handle, "SAVEPOINT job");
        try {
            job.run(new SqlWriteAccess(handle, writing.engine(), memory));
        } catch (RuntimeException | Error e) {
            takeBackToSavepoint(handle, e);
            job.fail(e instanceof RuntimeException failure ? writing.working(failure) : e);
        }
        PlainSql.update(handle, "RELEASE SAVEPOINT job");
    }

    /** Where not even that can be done, as on a full disk or over a broken connection, the transaction is lost. */
    private void takeBackToSavepoint(Handle handle, Throwable cause) {
        memory.clear();
        try {
            PlainSql.update(handle, "ROLLBACK TO SAVEPOINT job");
        } catch (RuntimeException e) {
            e.addSuppressed(cause);
            throw cause instanceof JdbiException || cause instanceof EngineFailure ? (RuntimeException) cause : e;
        }
    }

    private void commit(Handle handle) {
        try {
            handle.commit();
        } catch (RuntimeException e) {
            takeBack(handle, e);
            throw writing.committing(e);
        }
        writing.committed();
    }

    private void takeBack(Handle handle, Throwable cause) {
        memory.clear();
        try {
            if (handle.isInTransaction()) {
                handle.rollback();
            }
        } catch (RuntimeException e) {
            cause.addSuppressed(e);
        }
    }

    /** Takes no more jobs, and waits until those it has are done and told. */
    @Override
    public void close() {
        synchronized (this) {
            closed = true;
            notifyAll();
        }
        boolean interrupted = false;
        while (writer.isAlive()) {
            try {
                writer.join();
            } catch (InterruptedException e) {
                interrupted = true; // what was taken is done first
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
