package surfeit.lab;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;

/** The bytes of an upload as they were sent; can be opened more than once, each time from the start. */
public interface Upload {

    InputStream open() throws IOException;

    /** Media type as sent, without parameters: {@code text/csv}. */
    String mediaType();

    Optional<String> fileName();
}
