package surfeit.http.json;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;

/** Reads a body that holds nothing but a reason. */
public final class ReasonJson {
    private static final Keys<Fields> KEYS = new Keys<Fields>("a withdrawal")
        .key("reason", (in, fields) -> in.text().ifPresent(text -> fields.reason = text));

    private ReasonJson() {
    }

    private static final class Fields {
        private String reason = "";
    }

    /** The reason; empty where none is given, which is for the lab to refuse. */
    public static String read(InputStream body) throws IOException {
        return JsonDocument.read(body, in -> {
            Fields fields = new Fields();
            in.object(KEYS, fields);
            return Optional.of(fields.reason);
        });
    }
}
