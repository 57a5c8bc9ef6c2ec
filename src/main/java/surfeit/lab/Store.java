package surfeit.lab;

import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;
import surfeit.statistics.NumbersAside;

/** Where a lab's record is kept. Thread-safe; what one call reads or writes is of one piece. */
public interface Store {
    /** Name of the setting that says how many writes may wait. */
    String WAITING_SETTING = "writes-waiting-max";

    /** Reads one unchanging state of the record. */
    <T> T read(Function<ReadAccess, T> work);

    /**
     * Does all of the work or, where it throws, none of it. When this returns, what was written is on the disk.
     * Writers follow one another; a writer sees what those before it wrote.
     *
     * @throws ProblemException with {@link Problem#STORAGE_FULL} where the disk has no room, with
     *     {@link Problem#OVERLOADED} where too many writes wait already
     */
    <T> T write(Function<WriteAccess, T> work);

    /**
     * Does small work as {@link #write} would, in the same order, but shares its commit with other such work that waits
     * at the same time. Nobody holds a thread meanwhile. Where the commit fails for one of those who share it, the work is
     * taken back and done once more.
     *
     * @return completed once what was written is on the disk, or failed with what the work threw; by the writer's own
     *     thread, so that what follows must not keep it
     * @throws ProblemException with {@link Problem#OVERLOADED} where too much waits already
     */
    <T> CompletableFuture<T> writeShared(Foreseen foreseen, Function<WriteAccess, T> work);

    /** Does all of the work as {@link #write} would, then takes it back. */
    <T> T rehearse(Function<WriteAccess, T> work);

    /** True where other programs may change the record at the same time, so that nothing of it is to be remembered. */
    boolean isShared();

    /** Where passes for event streams are kept; empty where no other program could be asked for one. */
    Optional<SharedTickets> sharedTickets();

    /**
     * Copies the whole record as it stands at one moment, while others go on reading and writing. The copy is checked,
     * opened again and counted before this returns.
     *
     * @throws ProblemException with {@link Problem#STORAGE_FULL} where the disk has no room for it
     */
    Backup backup(Instant when);

    /**
     * A new list of numbers on disk beside the record, for as long as somebody reads it or the program runs.
     *
     * @throws ProblemException with {@link Problem#STORAGE_FULL} while it is written, where the disk has no room for it
     */
    NumbersAside numbersAside();

    /** Most writes that may wait for their turn here. */
    int writesWaitingMax();

    /** Bytes the record takes where it is kept. */
    long byteCount();

    /**
     * Has somebody woken after whatever may have appended events, once it is on the disk; also in vain, and where a
     * word of it may have been lost on the way. The call says nothing of what was appended: that is read from the
     * events, whose numbers grow in the order of the commits.
     *
     * @param wake called from any thread; it returns at once and does not throw
     */
    Listening onAppended(Runnable wake);

    /** Somebody who is woken, until it is closed. */
    interface Listening extends AutoCloseable {
        @Override
        void close();
    }
}
