package surfeit.http;

import io.javalin.http.Context;
import java.io.IOException;
import java.util.concurrent.Semaphore;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/**
 * How many bodies may be on their way at the same time. Thread-safe.
 *
 * <p>Each holds a thread until it is there, for as long as {@link RequestLimits#bodyTotal} at worst; without a limit a
 * few hundred senders that trickle would keep everybody else from an answer.
 */
final class ArrivingBodies {
    /** When to try again, in seconds. Judgement: most bodies take less. */
    private static final int RETRY_S = 5;

    private final Semaphore free;
    private final int most;

    ArrivingBodies(int most) {
        this.most = most;
        this.free = new Semaphore(most);
    }

    /**
     * Takes a place, to be given back by {@link #leave}; false where none is needed, since the body came with its head.
     *
     * @throws ProblemException quota-exceeded
     */
    boolean enter(Context context) throws IOException {
        if (isThere(context)) {
            return false;
        }
        if (!free.tryAcquire()) {
            context.res().setHeader("Retry-After", Integer.toString(RETRY_S));
            throw new ProblemException(Problem.QUOTA_EXCEEDED, "As many bodies as may, " + most
                + ", are on their way here already.").withSetting(RequestLimits.ARRIVING_SETTING);
        }
        return true;
    }

    private static boolean isThere(Context context) throws IOException {
        long announced = context.req().getContentLengthLong();
        return announced >= 0 && context.header("Expect") == null
            && context.req().getInputStream().available() >= announced;
    }

    void leave() {
        free.release();
    }
}
