package surfeit.storage;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;
import surfeit.lab.Foreseen;
import surfeit.lab.WriteAccess;

/** Work that waits for its turn to write, and what came of it. */
final class WriteJob<T> {
    /** What kind of transaction a job runs in. */
    enum Kind {
        /** Together with its neighbours. */
        SHARED,
        /** In one of its own, for it may take long. */
        ALONE,
        /** In one of its own that is taken back. */
        REHEARSED
    }

    private final Kind kind;
    private final Foreseen foreseen;
    private final Function<WriteAccess, T> work;
    private final CompletableFuture<T> answer = new CompletableFuture<>();
    private Optional<Throwable> failure = Optional.empty();
    private Runnable success = () -> { };

    WriteJob(Kind kind, Function<WriteAccess, T> work) {
        this(kind, Foreseen.NOTHING, work);
    }

    /** A small job. */
    WriteJob(Foreseen foreseen, Function<WriteAccess, T> work) {
        this(Kind.SHARED, foreseen, work);
    }

    private WriteJob(Kind kind, Foreseen foreseen, Function<WriteAccess, T> work) {
        this.kind = kind;
        this.foreseen = foreseen;
        this.work = work;
    }

    Kind kind() {
        return kind;
    }

    Foreseen foreseen() {
        return foreseen;
    }

    /** Completed once the work is on the disk, or is known not to be. */
    CompletableFuture<T> answer() {
        return answer;
    }

    /** Does the work, or does it again after what it did was taken back. */
    void run(WriteAccess access) {
        failure = Optional.empty();
        T value = work.apply(access);
        success = () -> answer.complete(value);
    }

    /** Notes why nothing of it will be on the disk; the first reason stays. */
    void fail(Throwable why) {
        if (failure.isEmpty()) {
            failure = Optional.of(why);
        }
    }

    /** Tells whoever waits. */
    void tell() {
        failure.ifPresentOrElse(answer::completeExceptionally, success);
    }
}
