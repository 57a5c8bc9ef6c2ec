package surfeit.lab;

import java.io.InputStream;
import java.util.Optional;

/** A file kept with an import: what was sent, or the rows given back. Read in pieces; the caller closes the stream. */
public record KeptFile(String mediaType, Optional<String> fileName, InputStream bytes) {
    /** Which of the files of an import. */
    public enum Kind { ORIGINAL, REJECTED }
}
