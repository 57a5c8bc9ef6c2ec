package surfeit.http;

import io.javalin.http.Context;
import java.util.concurrent.Semaphore;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.server.Request;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/**
 * Places for what may hold a thread as long as a client likes: a body on its way here, a large answer on its way out.
 * Without a limit, a few hundred clients that trickle would keep everybody else from an answer. Thread-safe.
 */
final class Places {
    /** When to try again, in seconds. Judgement: most clients take less. */
    private static final int RETRY_S = 5;

    private final Semaphore free;
    private final int most;
    private final String what;
    private final String setting;

    /** @param what what takes a place, for refusals */
    Places(int most, String what, String setting) {
        this.most = most;
        this.what = what;
        this.setting = setting;
        this.free = new Semaphore(most);
    }

    /** Takes a place, to be given back by {@link #leave}. @throws ProblemException quota-exceeded */
    void enter(Context context) {
        if (!free.tryAcquire()) {
            context.res().setHeader("Retry-After", Integer.toString(RETRY_S));
            throw new ProblemException(Problem.QUOTA_EXCEEDED, "As many " + what + " as may, " + most
                + ", are on their way already.").withSetting(setting);
        }
    }

    /** Takes a place until the request is over, however it ends. @throws ProblemException quota-exceeded */
    void enterUntilOver(Context context) {
        enter(context);
        Request.addCompletionListener(ServletContextRequest.getServletContextRequest(context.req()),
            failure -> leave());
    }

    void leave() {
        free.release();
    }
}
