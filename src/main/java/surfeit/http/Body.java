package surfeit.http;

import jakarta.servlet.http.HttpServletRequest;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import surfeit.http.json.DepthLimited;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.Upload;

/**
 * The body of a request: in memory up to a mebibyte, in a temporary file beyond. It can be opened more than once, as
 * deciding on a table's characters takes, and one in a file also while it arrives: then by other threads than the one that
 * receives it. Closing it removes the file. Not thread-safe otherwise.
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
    private final IncomingBytes bytes;
    private final long start = System.nanoTime();
    private byte[] memory;
    private int length;
    private Optional<AsideFile> aside = Optional.empty();
    private boolean isFast;

    private Body(Form form, Optional<String> fileName, int jsonDepthMax, IncomingBytes bytes, int expected) {
        this.form = form;
        this.jsonDepthMax = jsonDepthMax;
        this.fileName = fileName;
        this.bytes = bytes;
        this.memory = new byte[expected];
    }

    /**
     * Receives the body up to a mebibyte; {@link #receiveRest} does the rest.
     *
     * @throws ProblemException upload-too-large, request-timeout, unsupported-media-type, malformed-request
     */
    static Body begin(HttpServletRequest request, Form form, Optional<String> fileName, RequestLimits limits)
            throws IOException {
        IncomingBytes bytes = new IncomingBytes(request, BodyLimit.of(form, limits));
        long announced = request.getContentLengthLong();
        int expected = IncomingBytes.isGzip(request) || announced < 0 ? PIECE : (int) Math.min(announced, BELIEVED_MAX);
        Body body = new Body(form, fileName, limits.jsonDepthMax(), bytes, Math.max(expected, 1));
        try {
            body.receiveFirst();
            return body;
        } catch (IOException | RuntimeException e) {
            body.closeAfter(e);
            throw e;
        }
    }

    /** True for a body that came with its head, so that nobody has to wait for it. */
    static boolean isThere(HttpServletRequest request) throws IOException {
        long announced = request.getContentLengthLong();
        return announced >= 0 && request.getHeader("Expect") == null
            && request.getInputStream().available() >= announced;
    }

    private void receiveFirst() throws IOException {
        while (length < MEMORY_MAX) {
            if (length == memory.length) {
                memory = Arrays.copyOf(memory, Math.min(memory.length * 2, MEMORY_MAX));
            }
            int count = bytes.read(memory, length, Math.min(memory.length - length, PIECE));
            if (count < 0) {
                bytes.close();
                return;
            }
            length += count;
        }
        byte[] more = new byte[PIECE];
        int count = bytes.read(more, 0, PIECE);
        isFast = System.nanoTime() - start <= Patience.FIRST_NANOS;
        if (count < 0) {
            bytes.close();
        } else {
            putAside(memory, length);
            putAside(more, count);
        }
    }

    /**
     * Receives what is left; whoever reads meanwhile gets it as it comes, and no end where it breaks off.
     *
     * @throws ProblemException upload-too-large, request-timeout, malformed-request
     */
    void receiveRest() throws IOException {
        if (aside.isEmpty()) {
            return;
        }
        byte[] piece = new byte[PIECE];
        for (int count = bytes.read(piece, 0, PIECE); count >= 0; count = bytes.read(piece, 0, PIECE)) {
            putAside(piece, count);
        }
        bytes.close();
        aside.get().complete();
    }

    /** Adds a piece to the temporary file, which is made where there is none yet. */
    private void putAside(byte[] piece, int count) throws IOException {
        try {
            if (aside.isEmpty()) {
                aside = Optional.of(new AsideFile());
            }
            aside.get().append(piece, count);
        } catch (IOException e) {
            Path folder = Path.of(System.getProperty("java.io.tmpdir"));
            if (folder.toFile().getUsableSpace() > NO_SPACE_BYTES) {
                throw e;
            }
            throw new ProblemException(Problem.STORAGE_FULL, "The disk that holds temporary files (" + folder
                + ") has no room for an upload of this size. Nothing of it was stored.");
        }
    }

    @Override
    public InputStream open() throws IOException {
        InputStream all = aside.isEmpty() ? new ByteArrayInputStream(memory, 0, length)
            : aside.get().open(new Patience());
        return new DepthLimited(all, jsonDepthMax);
    }

    @Override
    public boolean isWhole() {
        return aside.isEmpty() || aside.get().isWhole();
    }

    /** True where its beginning came so fast that it may be read while the rest arrives. */
    boolean isFast() {
        return isFast;
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
    boolean isWithin(int most) {
        return aside.isEmpty() && length <= most;
    }

    /** Closes it where it failed; the failure stays the first. */
    void closeAfter(Exception failure) {
        try {
            close();
        } catch (UncheckedIOException e) {
            failure.addSuppressed(e);
        }
    }

    @Override
    public void close() {
        try {
            bytes.close();
        } catch (IOException e) {
            throw new UncheckedIOException("A request could not be closed.", e);
        } finally {
            closeAside();
        }
    }

    private void closeAside() {
        if (aside.isPresent()) {
            try {
                aside.get().close();
            } catch (IOException e) {
                throw new UncheckedIOException("A temporary file could not be closed.", e);
            }
        }
    }
}
