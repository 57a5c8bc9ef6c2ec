package surfeit.http;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.concurrent.TimeoutException;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/**
 * The bytes of a body as they come over the wire, still compressed where they are: stops at a pause, at the end of
 * the time for the whole body, and where compression is used to send bytes that become nothing. Not thread-safe.
 */
final class ArrivingBody extends FilterInputStream {
    /** Bytes that framing may add to content that does not compress; gzip adds 5 for each 16 KiB and its names. */
    private static final long FRAMING_MAX = 1 << 20;

    private final BodyLimit limit;
    private final long end;
    private long count;

    ArrivingBody(InputStream bytes, BodyLimit limit) {
        super(bytes);
        this.limit = limit;
        this.end = System.nanoTime() + limit.totalNanos();
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) throws IOException {
        int found = readInTime(bytes, offset, length);
        if (found > 0) {
            count += found;
            limit.requireFits(count - FRAMING_MAX, "it is larger as it was sent");
        }
        if (found >= 0 && System.nanoTime() - end > 0) {
            throw limit.tooLong();
        }
        return found;
    }

    private int readInTime(byte[] bytes, int offset, int length) throws IOException {
        try {
            return in.read(bytes, offset, length);
        } catch (IOException e) {
            for (Throwable cause = e; cause != null; cause = cause.getCause()) {
                if (cause instanceof TimeoutException) {
                    throw limit.stalled();
                }
            }
            throw e;
        }
    }
}
