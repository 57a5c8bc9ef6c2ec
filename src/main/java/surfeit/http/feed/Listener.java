package surfeit.http.feed;

/** Somebody the feed wakes. Thread-safe; no call blocks. */
interface Listener {

    /** There may be events that were not there before. */
    void wake();

    /** Time goes on. @param nanoTime by a clock that never goes back */
    void tick(long nanoTime);

    /** The service stops. */
    void shutDown();

    /** The service stops and waits no more. */
    void breakOff();
}
