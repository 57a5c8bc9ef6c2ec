package surfeit.http;

/** Whether the service takes work. Thread-safe. */
final class Readiness {
    private volatile boolean ended;

    boolean isReady() {
        return !ended;
    }

    void end() {
        ended = true;
    }
}
