package surfeit.http;

import com.fasterxml.jackson.core.JsonGenerator;
import io.javalin.http.Context;
import jakarta.servlet.http.HttpServletResponse;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.server.Response;
import surfeit.http.json.JsonFormat;
import surfeit.lab.KeptAnswer;
import surfeit.report.figure.Figure;

/** The answer to one request, in the form that was asked for. Not thread-safe. */
final class Answer {
    private static final int ANSWER_BYTES = 16 << 10;

    private final Context context;
    private final Route route;
    private final Form form;
    private final ServiceFacts facts;

    Answer(Context context, Route route, Form form, ServiceFacts facts) {
        this.context = context;
        this.route = route;
        this.form = form;
        this.facts = facts;
    }

    /** Writes the body of a JSON answer. */
    interface JsonBody {
        void write(JsonGenerator json) throws IOException;
    }

    /** Names the revisions the answer is made from; true where the client has it already and was told so. */
    boolean unchanged(long... revisions) throws IOException {
        return hasTag(Revisions.tag(facts.salt(form), revisions));
    }

    private boolean hasTag(String tag) throws IOException {
        readHeaders(tag);
        if (context.req().getMethod().equals("PUT") || context.req().getMethod().equals("POST")
            || !Revisions.namesTag(FieldLines.of(context, "If-None-Match"), tag)) {
            return false;
        }
        context.res().setStatus(HttpServletResponse.SC_NOT_MODIFIED);
        // what a 304 says replaces what the client's cache holds (RFC 9111, section 3.2): a page keeps its own policy, and
        // every answer its media type; sent now, it does not say that the length is 0 (RFC 9110, section 8.6)
        context.res().setHeader(SecurityHeaders.POLICY, null);
        context.res().setContentType(null);
        context.res().flushBuffer();
        return true;
    }

    /** As {@link #unchanged}, for a file known by the fingerprint of its bytes. */
    boolean unchangedContent(String fingerprint) throws IOException {
        return hasTag("\"" + fingerprint + "\"");
    }

    private void readHeaders(String tag) {
        HttpServletResponse response = context.res();
        response.setHeader("ETag", tag);
        response.setHeader("Cache-Control", "private, no-cache");
        if (!response.containsHeader("Vary")) {
            response.setHeader("Vary", "Accept, Authorization");
        }
    }

    /** Sets a header field of the answer. */
    void header(String name, String value) {
        context.res().setHeader(name, value);
    }

    /** Gives an answer that was made, or kept, as bytes of JSON. */
    void kept(KeptAnswer answer) throws IOException {
        answer.headers().forEach(this::header);
        context.res().setStatus(answer.status());
        bytes(Form.JSON.contentType(), answer.body());
    }

    /** A JSON body as bytes. */
    static byte[] bytes(JsonBody body) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(ANSWER_BYTES);
        try (JsonGenerator json = JsonFormat.generator(bytes)) {
            body.write(json);
        } catch (IOException e) {
            throw new UncheckedIOException("Writing to memory failed.", e);
        }
        return bytes.toByteArray();
    }

    /** Answers with JSON, made whole before the first byte is sent. */
    void json(int status, JsonBody body) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(ANSWER_BYTES);
        try (JsonGenerator json = JsonFormat.generator(bytes)) {
            body.write(json);
        }
        placeFor(bytes.size());
        HttpServletResponse response = context.res();
        response.setStatus(status);
        response.setContentType(Form.JSON.contentType());
        response.setContentLength(bytes.size());
        bytes.writeTo(response.getOutputStream());
    }

    /** Says what form the answer has that is written past this exchange. */
    void contentType() {
        context.res().setContentType(form.contentType());
    }

    /** The answer as the server's own, for those who write without waiting. */
    Response raw() {
        return ServletContextRequest.getServletContextRequest(context.req()).getServletContextResponse();
    }

    /** Answers with bytes that are ready. */
    void bytes(String contentType, byte[] bytes) throws IOException {
        placeFor(bytes.length);
        HttpServletResponse response = context.res();
        response.setContentType(contentType);
        response.setContentLength(bytes.length);
        response.getOutputStream().write(bytes);
    }

    /** What a request has recorded is told in any case. */
    private void placeFor(long byteCount) {
        boolean onlyReads = route.method().equals("GET") || route.scope() == Scope.READ;
        if (byteCount > RequestLimits.LARGE_BYTES && onlyReads && !isHead()) {
            facts.answers().enterUntilOver(context);
        }
    }

    /** Answers with a figure as a file. */
    void figure(Figure figure) throws IOException {
        header(SecurityHeaders.POLICY, PagePolicy.FIGURE);
        text(figure.svg());
    }

    void text(String text) throws IOException {
        bytes(form.contentType(), text.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * Answers with a stream of unknown length; the caller closes it. Closing or flushing does not end the answer: it
     * ends when the request was dealt with, so that a failure on the way still shows.
     */
    OutputStream stream(String contentType) throws IOException {
        placeFor(Long.MAX_VALUE);
        context.res().setContentType(contentType);
        return new BufferedOutputStream(new UnendedStream(context.res().getOutputStream()), 32 << 10);
    }

    /** Answers with a stream of known length; the caller closes it. */
    OutputStream stream(String contentType, long byteCount) throws IOException {
        context.res().setContentLengthLong(byteCount);
        return stream(contentType);
    }

    /** True where only its head is wanted. */
    boolean isHead() {
        return context.req().getMethod().equals("HEAD");
    }
}
