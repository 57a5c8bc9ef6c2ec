package surfeit.http;

import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;

/**
 * The part of a body that arrives after the request was refused.
 *
 * <p>A connection that is closed while the client still sends is reset, and the reset may overtake the refusal: the
 * client then sees a broken connection in place of the reason. So what still comes is read and forgotten, for a while,
 * and the answer says that the connection ends, lest the client send its next request on it.
 */
final class RestOfBody {
    /** Bytes forgotten at most: what a client has under way once the refusal reaches it, with room. Judgement. */
    private static final long BYTES_MAX = 8L << 20;
    /** How long to go on, so that a client that neither sends nor ends holds nothing up. Judgement. */
    private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(2);
    private static final long PAUSE_MS = 2;
    private static final int PIECE = 16 << 10;
    /** Requests that are waited for at the same time, of all services: each holds a thread. Judgement. */
    private static final Semaphore WAITED_FOR = new Semaphore(50);

    private RestOfBody() {
    }

    /** Whether something of the body has not arrived yet; what has arrived is read and forgotten. */
    static boolean isLeft(HttpServletRequest request) throws IOException {
        boolean announced = request.getContentLengthLong() > 0 || request.getHeader("Transfer-Encoding") != null;
        if (!announced || request.getHeader("Expect") != null) {
            // not through getInputStream(), which tells a client that waits for this word to send its body
            return announced && !ServletContextRequest.getServletContextRequest(request).getHttpInput().isFinished();
        }
        ServletInputStream in = request.getInputStream();
        byte[] piece = new byte[PIECE];
        long read = 0;
        for (int ready = in.available(); ready > 0 && !in.isFinished(); ready = in.available()) {
            read += Math.max(in.read(piece, 0, Math.min(ready, PIECE)), 0);
        }
        // that nothing comes after the last byte shows only where it is asked for
        long length = request.getContentLengthLong();
        return !in.isFinished() && (length < 0 || read < length || in.read() >= 0);
    }

    /** Reads what still comes, for a while, unless too many are waited for already. */
    static void forget(HttpServletRequest request) throws IOException {
        if (request.getHeader("Expect") != null || !WAITED_FOR.tryAcquire()) {
            return; // who expects an answer first waits to be told to go on, and was told no
        }
        try {
            forgetRest(request);
        } finally {
            WAITED_FOR.release();
        }
    }

    private static void forgetRest(HttpServletRequest request) throws IOException {
        ServletInputStream in = request.getInputStream();
        byte[] piece = new byte[PIECE];
        long left = BYTES_MAX;
        long end = System.nanoTime() + PATIENCE_NANOS;
        try {
            while (left > 0 && !in.isFinished() && System.nanoTime() < end) {
                int ready = in.available();
                if (ready == 0) {
                    TimeUnit.MILLISECONDS.sleep(PAUSE_MS);
                    continue;
                }
                int count = in.read(piece, 0, Math.min(ready, PIECE));
                if (count < 0) {
                    return;
                }
                left -= count;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
