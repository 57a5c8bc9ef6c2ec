package surfeit.http.feed;

/** Somebody the feed wakes. Thread-safe; no call blocks. */
interface Listener {

    /** There may be events that were not there before. */
    void wake();

    /**
     * Time goes on.
     *
     * @param nanoTime by a clock that never goes back
     * @param probing  whether to find out if the client is there still
     */
    void tick(long nanoTime, boolean probing);

    /** The service stops. */
    void shutDown();

    /** The service stops and waits no more. */
    void breakOff();
}
