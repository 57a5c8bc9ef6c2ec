package surfeit.http.json;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;

/** Reads why something is done, from the key {@code reason} of a body. */
public final class ReasonJson {
    private static final Keys<Fields> KEYS = keys("a withdrawal");

    private ReasonJson() {
    }

    private static final class Fields {
        private String reason = "";
    }

    private static Keys<Fields> keys(String shape) {
        return new Keys<Fields>(shape).key("reason", (in, fields) -> in.text().ifPresent(text -> fields.reason = text));
    }

    /** The reason of a body that holds nothing else; empty where none is given, which is for the lab to refuse. */
    public static String read(InputStream body) throws IOException {
        return read(KEYS, body);
    }

    /** The reason of a body of some shape that has one more key, which is passed over. */
    static String readBeside(String otherKey, String shape, InputStream body) throws IOException {
        return read(keys(shape).ignored(otherKey), body);
    }

    private static String read(Keys<Fields> keys, InputStream body) throws IOException {
        return JsonDocument.read(body, in -> {
            Fields fields = new Fields();
            in.object(keys, fields);
            return Optional.of(fields.reason);
        });
    }
}
