package surfeit.lab;

import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;
import surfeit.statistics.NumbersAside;

/** A store within one open transaction: all work joins it. For the thread of that transaction only. */
final class OpenStore implements Store {
    private final WriteAccess open;
    private final Store outer;

    OpenStore(WriteAccess open, Store outer) {
        this.open = open;
        this.outer = outer;
    }

    @Override
    public <T> T read(Function<ReadAccess, T> work) {
        return work.apply(open);
    }

    @Override
    public <T> T write(Function<WriteAccess, T> work) {
        return open.nested(work);
    }

    @Override
    public <T> CompletableFuture<T> writeShared(Foreseen foreseen, Function<WriteAccess, T> work) {
        try {
            return CompletableFuture.completedFuture(write(work));
        } catch (RuntimeException e) {
            return CompletableFuture.failedFuture(e);
        }
    }

    @Override
    public <T> T rehearse(Function<WriteAccess, T> work) {
        return open.rehearse(work);
    }

    @Override
    public boolean isShared() {
        return true;
    }

    @Override
    public Optional<SharedTickets> sharedTickets() {
        return Optional.empty();
    }

    @Override
    public Backup backup(Instant when) {
        throw new IllegalStateException("A backup is taken outside of transactions.");
    }

    @Override
    public NumbersAside numbersAside() {
        return outer.numbersAside();
    }

    @Override
    public int writesWaitingMax() {
        throw new IllegalStateException("Nothing waits within a transaction.");
    }

    @Override
    public long byteCount() {
        throw new IllegalStateException("The record is measured outside of transactions.");
    }

    @Override
    public Listening onAppended(Runnable wake) {
        throw new IllegalStateException("Events are heard of outside of transactions.");
    }
}
