package surfeit.lab;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/** Puts a file beside an import, mebibyte by mebibyte, and takes its length and hash on the way. */
final class FileCopy {
    private static final int PART_BYTES = 1 << 20;
    private static final int PIECE_BYTES = 1 << 13;

    private final SpotImportAccess record;
    private final KeptFile.Kind kind;
    private final MessageDigest digest;
    private byte[] part = {};
    private int filled;
    private long byteCount;
    private String head = "";

    FileCopy(SpotImportAccess record, KeptFile.Kind kind) {
        this.record = record;
        this.kind = kind;
        try {
            this.digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256.", e);
        }
    }

    /** A first line that is written only if something follows. */
    void setHead(String text) {
        head = text;
    }

    void append(String text) {
        byte[] bytes = (head + text).getBytes(StandardCharsets.UTF_8);
        head = "";
        append(bytes, bytes.length);
    }

    void copy(Upload upload) {
        byte[] buffer = new byte[PIECE_BYTES];
        try (InputStream bytes = upload.open()) {
            for (int count = bytes.read(buffer); count >= 0; count = bytes.read(buffer)) {
                append(buffer, count);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("The upload could not be read again from where it was put.", e);
        }
        flush();
    }

    private void append(byte[] bytes, int length) {
        digest.update(bytes, 0, length);
        byteCount += length;
        int done = 0;
        while (done < length) {
            int count = Math.min(length - done, PART_BYTES - filled);
            if (part.length < filled + count) {
                part = Arrays.copyOf(part, Math.min(Math.max(filled + count, 2 * part.length), PART_BYTES));
            }
            System.arraycopy(bytes, done, part, filled, count);
            done += count;
            filled += count;
            if (filled == PART_BYTES) {
                flush();
            }
        }
    }

    /** Writes what is left of the last part. */
    void flush() {
        if (filled > 0) {
            record.appendFile(kind, part, filled);
            filled = 0;
        }
    }

    long byteCount() {
        return byteCount;
    }

    /** SHA-256 in hex of all that was appended; once. */
    String sha256() {
        return HexFormat.of().formatHex(digest.digest());
    }
}
