package surfeit.http;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Holds every answer of the service against the OpenAPI document: status, media type, header fields and body. */
final class AnswerCheck {
    /** Refusals that any request can meet and that are declared once, as "any refusal". */
    private static final Set<Integer> ANYWHERE = Set.of(405, 408, 414, 431, 500, 503, 507);
    private static final Set<String> OURS = Set.of("etag", "vary", "location", "link", "allow", "content-disposition",
        "x-request-id", "www-authenticate", "retry-after");
    private static final int SHOWN_MAX = 800;
    private static final String PROBLEM = "/components/schemas/Problem";

    private AnswerCheck() {
    }

    /** @throws AssertionError where the answer is not as documented */
    static void check(String method, String address, Reply reply) {
        String path = address.contains("?") ? address.substring(0, address.indexOf('?')) : address;
        Optional<OpenApi.Operation> operation = OpenApi.DOCUMENT.operation(method.equals("HEAD") ? "GET" : method,
            path);
        String what = method + " " + address + " -> " + reply.status() + " " + reply.mediaType() + "\n"
            + reply.text().substring(0, Math.min(reply.text().length(), SHOWN_MAX));
        if (operation.isEmpty()) {
            require(reply.status() == (OpenApi.DOCUMENT.hasPath(path) ? 405 : 404)
                || reply.status() == 406, "undeclared route: " + what);
            if (!method.equals("HEAD")) {
                requireShape(PROBLEM, reply.text(), what);
            }
            return;
        }
        String status = operation.get().node().path("responses").has(Integer.toString(reply.status()))
            ? Integer.toString(reply.status()) : "default";
        require(!status.equals("default") || ANYWHERE.contains(reply.status()), "undeclared status: " + what);
        String pointer = operation.get().pointer() + "/responses/" + status;
        JsonNode answer = OpenApi.DOCUMENT.followed(OpenApi.DOCUMENT.root().at(pointer));
        checkHeaders(answer, reply, what);
        require(reply.status() != 304 || reply.header("Content-Type").isEmpty(), "a media type where nothing is sent: " + what);
        if (reply.status() == 304 || method.equals("HEAD")) {
            require(reply.body().length == 0, "a body where none may be: " + what);
            return;
        }
        require(answer.path("content").has(reply.mediaType()), "undeclared media type: " + what);
        String media = OpenApi.DOCUMENT.resolved(pointer + "/content/" + OpenApi.escaped(reply.mediaType()));
        if (reply.mediaType().equals("application/json") || reply.mediaType().equals("application/problem+json")) {
            requireShape(media + "/schema", reply.text(), what);
        } else if (OpenApi.DOCUMENT.root().at(media).has("x-line")) {
            reply.text().lines().forEach(line -> requireShape(media + "/x-line", line, what));
        }
    }

    private static void checkHeaders(JsonNode answer, Reply reply, String what) {
        for (String name : reply.headers().map().keySet()) {
            boolean declared = false;
            for (var fields = answer.path("headers").fieldNames(); fields.hasNext();) {
                declared |= fields.next().equalsIgnoreCase(name);
            }
            require(declared || !OURS.contains(name.toLowerCase(java.util.Locale.ROOT)), "undeclared header " + name
                + ": " + what);
        }
        for (String name : List.of("ETag", "X-Request-Id", "Cache-Control", "Vary")) {
            require(!answer.path("headers").has(name) || reply.header(name).isPresent(), "missing header " + name + ": "
                + what);
        }
    }

    private static void requireShape(String pointer, String json, String what) {
        var faults = OpenApi.DOCUMENT.faults(pointer, OpenApi.parse(json));
        require(faults.isEmpty(), faults.stream().limit(5).toList() + " in " + what);
    }

    private static void require(boolean holds, String message) {
        if (!holds) {
            throw new AssertionError(message);
        }
    }
}
