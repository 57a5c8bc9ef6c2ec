package surfeit.storage;

import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** How an engine opens a transaction that writes, and what a failure of it means. Called by one thread at a time. */
interface Writing {

    Engine engine();

    /** The one connection that writes. */
    Jdbi connection();

    /** Waits for the turn within a transaction that has begun. @return false where others may have written since the last */
    boolean takeTurn(Handle handle);

    /** The last thing before the commit. */
    void leaveTurn(Handle handle);

    /** What a failure before the commit means for the one who asked; anything else is passed on as it is. */
    RuntimeException working(RuntimeException failure);

    /** Whether a failure of the engine may be for what one of several jobs wrote or asked. */
    boolean isOfOneJob(Throwable failure);

    /** What a failure of the commit itself means. */
    RuntimeException committing(RuntimeException failure);

    /** Something was committed, and those who wait for its answer are not told yet. */
    void committed();
}
