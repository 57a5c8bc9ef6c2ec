package surfeit.http;

import jakarta.servlet.http.HttpServletRequest;
import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.ZipException;
import org.eclipse.jetty.io.EofException;
import surfeit.http.json.DepthLimited;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.Upload;

/**
 * The body of a request, received whole before anything is done with it: in memory up to a mebibyte, in a temporary
 * file beyond. Only then does it go on, piece by piece, to be read, checked and recorded: the record has one writer,
 * and no slow or broken connection may hold it. It can be opened more than once, as deciding on a table's characters
 * takes. Closing it removes the file. Not thread-safe.
 */
final class Body implements Upload, AutoCloseable {
    private static final int MEMORY_MAX = 1 << 20;
    private static final int PIECE = 16 << 10;
    /** Memory taken on the word of who announces a body; more only for what has come. Judgement: most are smaller. */
    private static final int BELIEVED_MAX = 64 << 10;
    /** Free space below which a failure to write is put down to a full disk, in bytes. Judgement. */
    private static final long NO_SPACE_BYTES = 1 << 20;

    private final Form form;
    private final Optional<String> fileName;
    private final int jsonDepthMax;
    private byte[] memory;
    private int length;
    private AsideFile aside;

    private Body(Form form, Optional<String> fileName, int expected, int jsonDepthMax) {
        this.form = form;
        this.jsonDepthMax = jsonDepthMax;
        this.fileName = fileName;
        this.memory = new byte[expected];
    }

    /**
     * Receives the body, inflating it where it is sent as gzip.
     *
     * @throws ProblemException upload-too-large, request-timeout, unsupported-media-type, malformed-request
     */
    static Body receive(HttpServletRequest request, Form form, Optional<String> fileName, RequestLimits limits)
            throws IOException {
        boolean gzip = isGzip(request.getHeader("Content-Encoding"));
        BodyLimit limit = BodyLimit.of(form, limits);
        long announced = request.getContentLengthLong();
        limit.requireFits(announced, announced + " bytes are announced");
        int expected = gzip || announced < 0 ? PIECE : (int) Math.min(announced, BELIEVED_MAX);
        Body body = new Body(form, fileName, Math.max(expected, 1), limits.jsonDepthMax());
        try (InputStream raw = new ArrivingBody(request.getInputStream(), limit);
             InputStream in = gzip ? new GzipMembers(raw) : raw) {
            body.fill(in, limit);
            return body;
        } catch (ZipException | EOFException e) {
            body.close();
            if (e instanceof EofException brokenOff) {
                throw brokenOff;
            }
            throw new ProblemException(
                Problem.MALFORMED_REQUEST, "Expected a body compressed with gzip, as Content-Encoding says: "
                + "it is cut short, damaged or something else, or something else follows it.");
        } catch (IOException | ProblemException e) {
            body.close();
            throw e;
        }
    }

    /** True for a body that came with its head, so that nobody has to wait for it. */
    static boolean isThere(HttpServletRequest request) throws IOException {
        long announced = request.getContentLengthLong();
        return announced >= 0 && request.getHeader("Expect") == null
            && request.getInputStream().available() >= announced;
    }

    private void fill(InputStream in, BodyLimit limit) throws IOException {
        long total = 0;
        byte[] piece = null;
        while (true) {
            if (aside == null && length == memory.length && length < MEMORY_MAX) {
                memory = Arrays.copyOf(memory, Math.min(memory.length * 2, MEMORY_MAX));
            }
            boolean toMemory = length < memory.length;
            piece = toMemory ? memory : piece == null || piece == memory ? new byte[PIECE] : piece;
            int offset = toMemory ? length : 0;
            int count = in.read(piece, offset, Math.min(piece.length - offset, PIECE));
            if (count < 0) {
                return;
            }
            total += count;
            limit.requireFits(total, "it is larger");
            if (toMemory) {
                length += count;
            } else {
                putAside(piece, count);
            }
        }
    }

    /** Adds a piece to the temporary file, which is made where there is none yet. */
    private void putAside(byte[] piece, int count) throws IOException {
        try {
            if (aside == null) {
                aside = new AsideFile();
                aside.append(memory, length);
            }
            aside.append(piece, count);
        } catch (IOException e) {
            Path folder = Path.of(System.getProperty("java.io.tmpdir"));
            if (folder.toFile().getUsableSpace() > NO_SPACE_BYTES) {
                throw e;
            }
            throw new ProblemException(Problem.STORAGE_FULL, "The disk that holds temporary files (" + folder
                + ") has no room for an upload of this size. Nothing of it was stored.");
        }
    }

    private static boolean isGzip(String encoding) {
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

    @Override
    public InputStream open() throws IOException {
        InputStream bytes = aside == null ? new ByteArrayInputStream(memory, 0, length) : aside.open();
        return new DepthLimited(bytes, jsonDepthMax);
    }

    @Override
    public String mediaType() {
        return form.mediaType();
    }

    @Override
    public Optional<String> fileName() {
        return fileName;
    }

    /** True where nothing was sent. */
    boolean isEmpty() {
        return length == 0;
    }

    /** True where it lies in memory and has so many bytes or fewer. */
    boolean isWithin(int bytes) {
        return aside == null && length <= bytes;
    }

    @Override
    public void close() {
        if (aside != null) {
            try {
                aside.close();
            } catch (IOException e) {
                throw new UncheckedIOException("A temporary file could not be closed.", e);
            }
        }
    }
}
