package surfeit.intake;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;

/** The bytes of an upload as sent, readable from the start more than once, so that the dialect is decided first. */
@FunctionalInterface
public interface Upload {

    /** A fresh stream from the first byte; the caller closes it. */
    InputStream open() throws IOException;

    /** An upload held in memory. */
    static Upload of(byte[] bytes) {
        return () -> new ByteArrayInputStream(bytes);
    }
}
