package surfeit.storage;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.Optional;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyIn;

/**
 * Rows in PostgreSQL's binary COPY form: a signature, then for each row the count of its fields and for each field its
 * length in bytes (-1 for none) and the bytes, then a count of -1. Source: PostgreSQL manual, COPY, "Binary Format". For
 * one use; not thread-safe.
 */
final class CopiedRows {
    private static final byte[] SIGNATURE = {'P', 'G', 'C', 'O', 'P', 'Y', '\n', (byte) 0xff, '\r', '\n', 0};
    private static final int NOTHING = -1;

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 16);
    private final DataOutputStream out = new DataOutputStream(bytes);

    CopiedRows() {
        write(() -> {
            out.write(SIGNATURE);
            out.writeInt(0);
            out.writeInt(0);
        });
    }

    /** Starts a row. */
    CopiedRows row(int fields) {
        return write(() -> out.writeShort(fields));
    }

    /** A field of type bigint. */
    CopiedRows number(long value) {
        return write(() -> {
            out.writeInt(Long.BYTES);
            out.writeLong(value);
        });
    }

    CopiedRows text(Optional<String> text) {
        return text.isPresent() ? bytes(text.get().getBytes(StandardCharsets.UTF_8)) : nothing();
    }

    CopiedRows bytes(byte[] value) {
        return write(() -> {
            out.writeInt(value.length);
            out.write(value);
        });
    }

    CopiedRows nothing() {
        return write(() -> out.writeInt(NOTHING));
    }

    int length() {
        return bytes.size();
    }

    /** Hands the rows over. @param copy a COPY ... FROM STDIN (FORMAT binary) */
    void send(PGConnection connection, String copy) throws SQLException {
        write(() -> out.writeShort(NOTHING));
        CopyIn stream = connection.getCopyAPI().copyIn(copy);
        try {
            byte[] all = bytes.toByteArray();
            stream.writeToCopy(all, 0, all.length);
            stream.endCopy();
        } finally {
            if (stream.isActive()) {
                stream.cancelCopy();
            }
        }
    }

    private interface Writing {
        void write() throws IOException;
    }

    private CopiedRows write(Writing writing) {
        try {
            writing.write();
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException("Memory refuses no byte.", e);
        }
    }
}
