package surfeit.http.json;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;

/** Reads a body that says nothing: an empty object. */
public final class EmptyJson {
    private static final Keys<Object> NONE = new Keys<>("this body, which says nothing");

    private EmptyJson() {
    }

    /** @throws surfeit.lab.ProblemException unknown-parameter, malformed-json */
    public static void read(InputStream body) throws IOException {
        JsonDocument.read(body, in -> {
            in.object(NONE, NONE);
            return Optional.of(NONE);
        });
    }
}
