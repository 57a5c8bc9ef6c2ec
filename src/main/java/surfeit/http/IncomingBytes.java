package surfeit.http;

import jakarta.servlet.http.HttpServletRequest;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import java.util.zip.ZipException;
import org.eclipse.jetty.io.EofException;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** What a request sends, as it comes: inflated where it is sent as gzip, and no more than may be. Not thread-safe. */
final class IncomingBytes implements AutoCloseable {
    private final BodyLimit limit;
    private final InputStream in;
    private long count;
    private boolean closed;

    /** @throws ProblemException upload-too-large, unsupported-media-type, malformed-request */
    IncomingBytes(HttpServletRequest request, BodyLimit limit) throws IOException {
        this.limit = limit;
        boolean gzip = isGzip(request);
        long announced = request.getContentLengthLong();
        limit.requireFits(announced, announced + " bytes are announced");
        InputStream raw = new ArrivingBody(request.getInputStream(), limit);
        try {
            this.in = gzip ? new GzipMembers(raw) : raw;
        } catch (IOException e) {
            raw.close();
            throw meant(e);
        } catch (RuntimeException e) {
            raw.close();
            throw e;
        }
    }

    /**
     * As {@link InputStream#read(byte[], int, int)}.
     *
     * @throws ProblemException upload-too-large, request-timeout, malformed-request
     */
    int read(byte[] bytes, int offset, int length) throws IOException {
        try {
            int found = in.read(bytes, offset, length);
            count += Math.max(found, 0);
            limit.requireFits(count, "it is larger");
            return found;
        } catch (IOException e) {
            throw meant(e);
        }
    }

    /** A connection that broke stays what it is; all else that ends too early is a fault of the compression. */
    private static IOException meant(IOException failure) {
        boolean ofCompression = failure instanceof ZipException
            || failure instanceof EOFException && !(failure instanceof EofException);
        if (!ofCompression) {
            return failure;
        }
        throw new ProblemException(
            Problem.MALFORMED_REQUEST, "Expected a body compressed with gzip, as Content-Encoding says: "
            + "it is cut short, damaged or something else, or something else follows it.");
    }

    /** Whether a request sends its body as gzip. @throws ProblemException unsupported-media-type, where as neither */
    static boolean isGzip(HttpServletRequest request) {
        String encoding = request.getHeader("Content-Encoding");
        String word = encoding == null ? "identity" : encoding.strip().toLowerCase(Locale.ROOT);
        if (word.equals("gzip") || word.equals("x-gzip")) {
            return true;
        }
        if (word.isEmpty() || word.equals("identity")) {
            return false;
        }
        throw new ProblemException(
            Problem.UNSUPPORTED_MEDIA_TYPE, "Expected a body as it is or with Content-Encoding: gzip, got \""
            + encoding + "\".");
    }

    /** Once: the request may be over when it is closed again. */
    @Override
    public void close() throws IOException {
        if (!closed) {
            closed = true;
            in.close();
        }
    }
}
