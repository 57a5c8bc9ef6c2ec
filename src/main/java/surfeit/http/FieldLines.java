package surfeit.http;

import io.javalin.http.Context;
import java.util.Collections;
import java.util.List;

/** Header fields that are lists and may come in several lines, which then are one (RFC 9110, section 5.3). */
final class FieldLines {
    private FieldLines() {
    }

    /** All that the request says under a name; null where it says nothing. */
    static String of(Context context, String name) {
        List<String> lines = Collections.list(context.req().getHeaders(name));
        return lines.isEmpty() ? null : lines.size() == 1 ? lines.get(0) : String.join(", ", lines);
    }
}
