package surfeit.storage;

import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** How an engine opens a transaction that writes, and what a failure of it means. Called by one thread at a time. */
interface Writing {

    Engine engine();

    /** True where other programs write too, between one transaction and the next. */
    boolean isShared();

    /** The one connection that writes. */
    Jdbi connection();

    /** Waits for the turn within a transaction that has begun. */
    void takeTurn(Handle handle);

    /** What a failure before the commit means for the one who asked; anything else is passed on as it is. */
    RuntimeException working(RuntimeException failure);

    /** What a failure of the commit itself means. */
    RuntimeException committing(RuntimeException failure);

    /** Something was committed, and those who wait for its answer are not told yet. */
    void committed();
}
