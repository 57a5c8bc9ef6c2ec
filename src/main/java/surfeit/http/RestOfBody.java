package surfeit.http;

import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.concurrent.TimeUnit;

/**
 * The part of a body that arrives after the request was refused.
 *
 * <p>A connection that is closed while the client still sends is reset, and the reset may overtake the refusal: the
 * client then sees a broken connection in place of the reason. So what still comes is read and forgotten, for a while.
 */
final class RestOfBody {
    /** Bytes forgotten at most: what a client has under way once the refusal reaches it, with room. Judgement. */
    private static final long BYTES_MAX = 8L << 20;
    /** How long to go on, so that a client that neither sends nor ends holds nothing up. Judgement. */
    private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(2);
    private static final long PAUSE_MS = 2;
    private static final int PIECE = 16 << 10;

    private RestOfBody() {
    }

    /** Reads what still comes, without waiting for a client that has stopped to send. */
    static void forget(HttpServletRequest request) throws IOException {
        if (request.getHeader("Expect") != null) {
            return; // this client waits to be told to go on, and was told no
        }
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
