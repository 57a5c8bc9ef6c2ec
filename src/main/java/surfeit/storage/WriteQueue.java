package surfeit.storage;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import surfeit.lab.Foreseen;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.Store;
import surfeit.lab.WriteAccess;

/**
 * The one writer of a record: does the jobs it is given in the order it was given them, and tells what came of each once
 * the commit that holds it is on the disk. Thread-safe.
 *
 * <p>Small jobs that wait at the same time share a transaction, and so one commit. Each is a step of it: one that fails
 * takes back just itself. What they write is held and sent together ({@link HeldRows}); where the engine refuses it for
 * something that one of them wrote or asked, all is taken back and each is done again by itself. What several of them
 * need done once is done at the end ({@link WriteAccess#last}). A job that may take long has a transaction of its own, so
 * that those before it need not wait for it. Who finds the queue full is refused at once.
 */
final class WriteQueue implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(WriteQueue.class);
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
    synchronized <T> CompletableFuture<T> add(WriteJob<T> job) {
        if (closed) {
            throw new ProblemException(Problem.SHUTTING_DOWN, "The record is closed.");
        }
        if (waiting.size() >= waitingMax) {
            throw new ProblemException(Problem.OVERLOADED, waitingMax + " changes wait to be recorded already.")
                .withSetting(Store.WAITING_SETTING);
        }
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
            return add(new WriteJob<>(kind, work)).join();
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
                inTransaction(jobs, job.get().kind() == WriteJob.Kind.SHARED);
            } catch (RuntimeException | Error e) {
                boolean damaged = e instanceof StorageException; // what was read at the end for the sake of one of them
                if (jobs.size() > 1 && (damaged || writing.isOfOneJob(e))) {
                    jobs.forEach(this::byItself);
                } else {
                    jobs.forEach(each -> each.fail(e));
                }
            }
            jobs.forEach(WriteJob::tell);
        }
    }

    private void byItself(WriteJob<?> job) {
        try {
            inTransaction(List.of(job), false);
        } catch (RuntimeException | Error e) {
            job.fail(e);
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

    /** Those at the head of the queue that share a commit. */
    private synchronized List<WriteJob<?>> nextToShare(int most) {
        List<WriteJob<?>> next = new ArrayList<>();
        while (next.size() < most && !waiting.isEmpty() && waiting.peek().kind() == WriteJob.Kind.SHARED) {
            next.add(waiting.remove());
        }
        return next;
    }

    /** @param jobs the first job, and those that come to share its transaction where it shares one */
    private void inTransaction(List<WriteJob<?>> jobs, boolean shares) {
        try {
            Handle handle = writing.connection().open();
            try {
                handle.begin();
                if (!writing.takeTurn(handle)) {
                    memory.clear();
                }
                Map<String, Consumer<WriteAccess>> last = new LinkedHashMap<>();
                if (shares) {
                    share(handle, jobs, last);
                } else {
                    jobs.get(0).run(access(handle, last));
                }
                KeptStatements.held(handle).send();
                if (jobs.get(0).kind() == WriteJob.Kind.REHEARSED) {
                    takeBack(handle);
                    return;
                }
                List.copyOf(last.values()).forEach(work -> work.accept(access(handle, last)));
                KeptStatements.held(handle).send();
                writing.leaveTurn(handle);
                commit(handle);
                memory.committed();
            } catch (RuntimeException | Error e) {
                takeBack(handle, e);
                throw e;
            } finally {
                giveBack(handle);
            }
        } catch (RuntimeException e) {
            throw writing.working(e);
        }
    }

    private SqlWriteAccess access(Handle handle, Map<String, Consumer<WriteAccess>> last) {
        return new SqlWriteAccess(handle, writing.engine(), memory, last);
    }

    /** What was committed stays so, whatever becomes of the connection. */
    private static void giveBack(Handle handle) {
        try {
            handle.close();
        } catch (RuntimeException e) {
            LOG.warn("The connection that writes could not be given back: {}", e.toString());
        }
    }

    /** Does the first job and those that wait by then, then those that came meanwhile. */
    private void share(Handle handle, List<WriteJob<?>> jobs, Map<String, Consumer<WriteAccess>> last) {
        long start = System.nanoTime();
        jobs.addAll(nextToShare(SHARED_MAX - jobs.size()));
        List<WriteJob<?>> some = List.copyOf(jobs);
        while (!some.isEmpty()) {
            writing.engine().foresee(handle, memory, some.stream().<Foreseen>map(WriteJob::foreseen).toList());
            some.forEach(job -> runWithin(handle, job, last));
            boolean late = System.nanoTime() - start >= SHARED_NANOS;
            some = late ? List.of() : nextToShare(SHARED_MAX - jobs.size());
            jobs.addAll(some);
        }
    }

    /** Does a job as a step of the transaction; a failure of the engine is one of the whole transaction. */
    private void runWithin(Handle handle, WriteJob<?> job, Map<String, Consumer<WriteAccess>> last) {
        HeldRows held = KeptStatements.held(handle);
        held.begin();
        try {
            job.run(access(handle, last));
            held.keep();
        } catch (JdbiException | EngineFailure e) {
            throw e;
        } catch (RuntimeException | Error e) {
            memory.clear();
            held.takeBack();
            job.fail(e instanceof RuntimeException failure ? writing.working(failure) : e);
        }
    }

    private void commit(Handle handle) {
        try {
            handle.commit();
        } catch (RuntimeException e) {
            throw writing.committing(e);
        }
        writing.committed();
    }

    private void takeBack(Handle handle) {
        memory.clear();
        KeptStatements.held(handle).end();
        if (handle.isInTransaction()) {
            handle.rollback();
        }
    }

    private void takeBack(Handle handle, Throwable cause) {
        try {
            takeBack(handle);
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
