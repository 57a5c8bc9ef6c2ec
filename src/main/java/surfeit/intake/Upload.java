package surfeit.intake;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;

/** The bytes of an upload as sent, readable from the start more than once, so that the dialect is decided first. */
@FunctionalInterface
public interface Upload {

    /**
     * A fresh stream from the first byte; the caller closes it. Where the upload still arrives, it waits for what is to
     * come, and ends with an {@link UnfinishedUploadException} where that takes too long.
     */
    InputStream open() throws IOException;

    /** False while it still arrives, so that nobody can have seen its end. */
    default boolean isWhole() {
        return true;
    }

    /** An upload held in memory. */
    static Upload of(byte[] bytes) {
        return () -> new ByteArrayInputStream(bytes);
    }
}
