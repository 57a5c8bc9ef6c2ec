package surfeit.http;

import io.javalin.http.Context;
import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** What a request sends, before it is received: its form, its character set, whether there is anything. Not thread-safe. */
final class RequestBody {
    private final Context context;
    private final Route route;
    private final ServiceFacts facts;

    RequestBody(Context context, Route route, ServiceFacts facts) {
        this.context = context;
        this.route = route;
        this.facts = facts;
    }

    /** Its form, by the media type. @throws ProblemException unsupported-media-type */
    Form form() {
        String sent = context.header("Content-Type"); // the servlet's own way fails on a charset it does not know
        String mediaType = sent == null ? "" : sent.split(";", 2)[0].strip().toLowerCase(Locale.ROOT);
        for (Form each : route.takes()) {
            if (each.mediaType().equals(mediaType)) {
                requireCharset(each, sent);
                return each;
            }
        }
        throw new ProblemException(Problem.UNSUPPORTED_MEDIA_TYPE, "Expected Content-Type: "
            + String.join(" or ", route.takes().stream().map(Form::mediaType).toList()) + "; got "
            + (sent == null ? "none." : "\"" + sent + "\"."));
    }

    private void requireCharset(Form each, String sent) {
        Optional<String> charset = charset(sent);
        if (each != Form.CSV && charset.isPresent() && !charset.get().equalsIgnoreCase("utf-8")) {
            throw new ProblemException(Problem.UNSUPPORTED_MEDIA_TYPE,
                "JSON is read as UTF-8 only; Content-Type says charset=" + charset.get() + ".");
        }
    }

    /** The character set its Content-Type names. */
    Optional<String> charset() {
        return charset(context.header("Content-Type"));
    }

    private static Optional<String> charset(String contentType) {
        return HeaderParameters.of(contentType, "charset");
    }

    /** True where something was sent. */
    boolean isSent() {
        return context.req().getContentLengthLong() > 0 || context.header("Transfer-Encoding") != null;
    }

    /** Receives it in the form its media type says; the caller closes it. @throws ProblemException unsupported-media-type */
    Body receive() throws IOException {
        return receive(form());
    }

    /** Receives it; the caller closes it. */
    Body receive(Form of) throws IOException {
        return receive(of, beginning -> { });
    }

    /**
     * Receives it; the caller closes it.
     *
     * @param meanwhile is given a large one that has only begun to arrive, and must not wait for the rest
     */
    Body receive(Form of, Consumer<Body> meanwhile) throws IOException {
        boolean placed = !Body.isThere(context.req());
        if (placed) {
            facts.bodies().enter(context);
        }
        try {
            Body body = Body.begin(context.req(), of, HeaderParameters.fileName(context.header("Content-Disposition")),
                facts.settings().requests());
            try {
                if (!body.isWhole()) {
                    meanwhile.accept(body);
                }
                body.receiveRest();
                return body;
            } catch (IOException | RuntimeException e) {
                body.closeAfter(e);
                throw e;
            }
        } finally {
            if (placed) {
                facts.bodies().leave();
            }
        }
    }
}
