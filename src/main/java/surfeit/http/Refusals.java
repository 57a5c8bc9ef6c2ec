package surfeit.http;

import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.StandardSocketOptions;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletionException;
import java.util.concurrent.TimeoutException;
import java.util.regex.Pattern;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.io.EofException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import surfeit.http.board.RefusalPage;
import surfeit.http.json.MalformedJsonException;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/**
 * Turns whatever went wrong into a refusal the client can act on; what was not foreseen is logged, never shown.
 * Thread-safe.
 */
final class Refusals {
    private static final Logger LOG = LoggerFactory.getLogger(Refusals.class);
    private static final Pattern REQUEST_ID = Pattern.compile("[A-Za-z0-9._-]{8,64}");
    private static final SecureRandom RANDOM = new SecureRandom();
    private static final int REQUEST_ID_BYTES = 12;
    /** Refusals that come in the middle of a body; the connection cannot be used again then. */
    private static final Set<Problem> LEAVES_BODY =
        EnumSet.of(Problem.UPLOAD_TOO_LARGE, Problem.REQUEST_TIMEOUT, Problem.STORAGE_FULL);
    /** When to come again to a record that cannot be used now. Judgement: a server that restarts takes seconds. */
    private static final String RETRY_S = "5";
    /** When to come again to a queue that is full: it takes some tenths of a second to empty. */
    private static final String RETRY_QUEUE_S = "1";
    /** Header fields that a handler may have set for the answer that is not given. */
    private static final List<String> STALE =
        List.of("ETag", "Location", "Link", "Content-Disposition", "Vary");

    private final RouteTable table;

    Refusals(RouteTable table) {
        this.table = table;
    }

    /** The id the client gave in {@code X-Request-Id}, where it is fit for a log; else a new one. */
    static String requestId(String given) {
        if (given != null && REQUEST_ID.matcher(given).matches()) {
            return given;
        }
        byte[] bytes = new byte[REQUEST_ID_BYTES];
        RANDOM.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    /** What a future failed with, out of what futures wrap around it on the way; an error fits no refusal's words. */
    static Exception cause(Throwable failure) {
        Throwable cause = failure instanceof CompletionException ? failure.getCause() : failure;
        return cause instanceof Exception exception ? exception : new IllegalStateException(cause);
    }

    /** Answers a request that failed. */
    void refuse(Context context, Exception cause) throws IOException {
        String id = requestId(context.header("X-Request-Id"));
        HttpServletResponse response = context.res();
        ProblemException refusal = refusal(context, cause);
        boolean clientGone = isClientGone(cause);
        if (!clientGone) {
            log(context, refusal, cause, id);
        }
        if (response.isCommitted() || clientGone) {
            breakOff(context);
            return;
        }
        response.resetBuffer();
        response.setStatus(refusal.problem().status());
        for (String stale : STALE) {
            response.setHeader(stale, null);
        }
        response.setHeader(SecurityHeaders.POLICY, SecurityHeaders.ALL.get(SecurityHeaders.POLICY));
        response.setHeader("Cache-Control", "no-store");
        if (refusal.problem() == Problem.STORAGE_UNAVAILABLE) {
            response.setHeader("Retry-After", RETRY_S);
        } else if (refusal.problem() == Problem.OVERLOADED) {
            response.setHeader("Retry-After", RETRY_QUEUE_S);
        }
        boolean leavesBody = LEAVES_BODY.contains(refusal.problem()) || RestOfBody.isLeft(context.req());
        if (leavesBody) {
            response.setHeader("Connection", "close");
        }
        response.setHeader("X-Request-Id", id);
        byte[] bytes;
        if (wantsPage(context)) {
            Problem problem = refusal.problem();
            bytes = new RefusalPage(problem.title(), refusal.getMessage(), problem.whatToDo(), id).html()
                .getBytes(StandardCharsets.UTF_8);
            response.setContentType(Form.HTML.contentType());
            response.setHeader(SecurityHeaders.POLICY, PagePolicy.BOARD);
        } else {
            bytes = ProblemJson.of(refusal, id);
            response.setContentType(ProblemJson.MEDIA_TYPE);
        }
        response.setContentLength(bytes.length);
        response.getOutputStream().write(bytes);
        if (leavesBody && refusal.problem() != Problem.REQUEST_TIMEOUT) {
            response.flushBuffer();
            RestOfBody.forget(context.req());
        }
    }

    /** True at the address of a page, where whoever asks can show one and did not ask for the problem itself. */
    private boolean wantsPage(Context context) {
        String accept = FieldLines.of(context, "Accept");
        return accept != null && accept.contains(Form.HTML.mediaType()) && !accept.contains(ProblemJson.MEDIA_TYPE)
            && table.isPage(context.path());
    }

    /**
     * Resets the connection, so that no half answer can pass for a whole one, even where only the end of the connection
     * marks the end of the answer.
     */
    private static void breakOff(Context context) throws IOException {
        EndPoint endPoint = ServletContextRequest.getServletContextRequest(context.req()).getConnectionMetaData()
            .getConnection().getEndPoint();
        if (endPoint.getTransport() instanceof SocketChannel channel && channel.isOpen()) {
            channel.setOption(StandardSocketOptions.SO_LINGER, 0);
        }
        endPoint.close();
    }

    /** True where the client went away, or has taken nothing of its answer for too long; nobody is left to be told. */
    private static boolean isClientGone(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof EofException
                || cause instanceof IOException && cause.getCause() instanceof TimeoutException) {
                return true;
            }
        }
        return false;
    }

    /** Tells whoever runs the service what only they can mend; neither header fields nor bodies have a place there. */
    private static void log(Context context, ProblemException refusal, Exception cause, String id) {
        if (refusal.problem() == Problem.INTERNAL) {
            LOG.error("Unforeseen failure of {} {}, request_id {}.\n{}", context.method(), context.path(), id,
                Trace.of(cause));
        } else if (refusal.problem() == Problem.STORAGE_FULL || refusal.problem() == Problem.STORAGE_UNAVAILABLE) {
            LOG.warn("{} ({} {}, request_id {})", refusal.getMessage(), context.method(), context.path(), id);
        }
    }

    private ProblemException refusal(Context context, Exception cause) {
        if (cause instanceof ProblemException refusal) {
            return refusal;
        }
        if (cause instanceof MalformedJsonException malformed) {
            return malformed.refusal();
        }
        if (cause instanceof HttpResponseException framework && framework.getStatus() == Problem.NOT_FOUND.status()) {
            return nothingHere(context);
        }
        return new ProblemException(
            Problem.INTERNAL, "The request could not be answered for a reason that is not its fault.");
    }

    private ProblemException nothingHere(Context context) {
        String path = context.path();
        Set<String> methods = table.methodsAt(path);
        if (!methods.isEmpty()) {
            context.res().setHeader("Allow", String.join(", ", methods));
            return new ProblemException(Problem.METHOD_NOT_ALLOWED, "Expected " + String.join(", ", methods) + "; got "
                + context.req().getMethod() + ".");
        }
        return table.formsBeside(path)
            .map(forms -> new ProblemException(Problem.NOT_ACCEPTABLE, "This address has the suffixes "
                + String.join(", ", forms.stream().map(Form::suffix).toList()) + "; got \"" + path + "\"."))
            .orElseGet(() -> new ProblemException(Problem.NOT_FOUND, "Nothing answers at \"" + path + "\"."));
    }
}
