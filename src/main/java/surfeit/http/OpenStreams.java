package surfeit.http;

import io.javalin.http.Context;
import java.util.concurrent.Semaphore;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.server.Request;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** How many answers that go on until somebody ends them may be open at the same time. Thread-safe. */
final class OpenStreams {
    /** When to try again, in seconds. Judgement: streams end rarely. */
    private static final int RETRY_S = 5;

    private final Semaphore free;
    private final int most;
    private final Runnable whenFull;

    /** @param whenFull finds out which clients are gone, which may show only when they are written to */
    OpenStreams(int most, Runnable whenFull) {
        this.most = most;
        this.whenFull = whenFull;
        this.free = new Semaphore(most);
    }

    /** Takes a place until the request is over, however it ends. @throws ProblemException quota-exceeded */
    void enter(Context context) {
        if (!free.tryAcquire()) {
            whenFull.run();
            context.res().setHeader("Retry-After", Integer.toString(RETRY_S));
            throw new ProblemException(Problem.QUOTA_EXCEEDED, "All " + most + " streams are open already.")
                .withSetting(RequestLimits.STREAMS_SETTING);
        }
        Request.addCompletionListener(ServletContextRequest.getServletContextRequest(context.req()), failure ->
            free.release());
    }
}
