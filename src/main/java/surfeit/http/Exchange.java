package surfeit.http;

import com.fasterxml.jackson.core.JsonGenerator;
import io.javalin.http.Context;
import jakarta.servlet.http.HttpServletResponse;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.server.Response;
import surfeit.element.Spelling;
import surfeit.http.json.JsonFormat;
import surfeit.lab.Expectation;
import surfeit.lab.KeptAnswer;
import surfeit.lab.Occasion;
import surfeit.lab.PageRequest;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.RepeatKey;
import surfeit.report.figure.Figure;

/** One request and its answer. Not thread-safe. */
final class Exchange {
    private static final int ANSWER_BYTES = 16 << 10;
    private static final Pattern REPEAT_KEY = Pattern.compile("[\\x21-\\x7E]{1,200}");

    private final Context context;
    private final Route route;
    private final Form form;
    private final ServiceFacts facts;
    private final Admission admission;
    private final Parameters parameters;
    private final BooleanSupplier reader;
    private Optional<CompletableFuture<PendingAnswer>> pending = Optional.empty();

    /** @throws ProblemException malformed-request, unknown-parameter */
    Exchange(Context context, Route route, Form form, ServiceFacts facts, Admission admission, BooleanSupplier reader) {
        this.context = context;
        this.route = route;
        this.form = form;
        this.facts = facts;
        this.admission = admission;
        this.reader = reader;
        Optional<String> query = Optional.ofNullable(context.req().getQueryString());
        query.ifPresent(QueryEncoding::require);
        this.parameters = new Parameters(query.isEmpty() ? Map.of() : context.queryParamMap(), route.parameters());
    }

    /** Writes the body of a JSON answer. */
    interface JsonBody {
        void write(JsonGenerator json) throws IOException;
    }

    String path(String name) {
        return context.pathParam(name);
    }

    Parameters parameters() {
        return parameters;
    }

    /** The form the answer is to have. */
    Form form() {
        return form;
    }

    ServiceFacts facts() {
        return facts;
    }

    Instant now() {
        return facts.clock().instant().truncatedTo(ChronoUnit.MILLIS);
    }

    /**
     * Whether who asks may read the lab's work; false where no token is shown and one is needed.
     *
     * @throws ProblemException as other addresses, where a token is shown that does not do
     */
    boolean mayRead() {
        return reader.getAsBoolean();
    }

    /** The languages the client's reader knows, as it says them; empty text where it says none. */
    String acceptLanguage() {
        return context.header("Accept-Language") == null ? "" : context.header("Accept-Language");
    }

    /** Who asks, and when. */
    Occasion occasion() {
        return new Occasion(admission.who(), now());
    }

    /** As what the request was let in. */
    Admission admission() {
        return admission;
    }

    Optional<String> requestHeader(String name) {
        return Optional.ofNullable(context.header(name));
    }

    /** What the request says of the revision a change starts from. */
    Expectation expectation() {
        return Revisions.expectation(context.header("If-Match"), context.header("If-None-Match"));
    }

    /** The body's form, by its media type. @throws ProblemException unsupported-media-type */
    Form bodyForm() {
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

    /** The character set the body's Content-Type names. */
    Optional<String> bodyCharset() {
        return charset(context.header("Content-Type"));
    }

    private static Optional<String> charset(String contentType) {
        return HeaderParameters.of(contentType, "charset");
    }

    /** True where something was sent. */
    boolean hasBody() {
        return context.req().getContentLengthLong() > 0 || context.header("Transfer-Encoding") != null;
    }

    /** Receives the body; the caller closes it. */
    Body body(Form of) throws IOException {
        boolean placed = !Body.isThere(context.req());
        if (placed) {
            facts.bodies().enter(context);
        }
        try {
            return Body.receive(context.req(), of,
                HeaderParameters.of(context.header("Content-Disposition"), "filename"), facts.settings().requests());
        } finally {
            if (placed) {
                facts.bodies().leave();
            }
        }
    }

    /** Names the revisions the answer is made from; true where the client has it already and was told so. */
    boolean unchanged(long... revisions) {
        return unchanged(Revisions.tag(facts.salt(form), revisions));
    }

    private boolean unchanged(String tag) {
        readHeaders(tag);
        if (context.req().getMethod().equals("PUT") || context.req().getMethod().equals("POST")
            || !Revisions.namesTag(context.header("If-None-Match"), tag)) {
            return false;
        }
        context.res().setStatus(HttpServletResponse.SC_NOT_MODIFIED);
        // what a 304 says replaces what the client's cache holds (RFC 9111, section 3.2): a page keeps its own policy
        context.res().setHeader(SecurityHeaders.POLICY, null);
        return true;
    }

    /** As {@link #unchanged}, for a file known by the fingerprint of its bytes. */
    boolean unchangedContent(String fingerprint) {
        return unchanged("\"" + fingerprint + "\"");
    }

    private void readHeaders(String tag) {
        HttpServletResponse response = context.res();
        response.setHeader("ETag", tag);
        response.setHeader("Cache-Control", "private, no-cache");
        response.setHeader("Vary", "Accept, Authorization");
    }

    /** Sets a header field of the answer. */
    void header(String name, String value) {
        context.res().setHeader(name, value);
    }

    /** The page asked for of the list this address and its filters name. */
    PageRequest page() {
        return parameters.page(parameters.list(context.path()));
    }

    /** The cursor of the next page; its whole address goes into a Link field. */
    Optional<String> next(Optional<String> key) {
        Optional<String> cursor = key.map(k -> Cursor.of(parameters.list(context.path()), k));
        cursor.ifPresent(text -> header("Link", "<" + address(text) + ">; rel=\"next\""));
        return cursor;
    }

    private String address(String cursor) {
        Map<String, String> query = new TreeMap<>();
        context.queryParamMap().forEach((name, values) -> query.put(name, values.get(0)));
        query.put("cursor", cursor);
        StringBuilder address = new StringBuilder(
            Origin.of(context.req(), facts.settings().access().proxies()).service())
            .append(context.req().getRequestURI());
        char separator = '?';
        for (Map.Entry<String, String> entry : query.entrySet()) {
            address.append(separator).append(entry.getKey()).append('=')
                .append(URLEncoder.encode(entry.getValue(), StandardCharsets.UTF_8));
            separator = '&';
        }
        return address.toString();
    }

    /** The key under which the request is done only once; empty where the client gives none. */
    Optional<RepeatKey> repeatKey(Body body) throws IOException {
        String key = context.header("Idempotency-Key");
        if (key == null) {
            return Optional.empty();
        }
        if (!REPEAT_KEY.matcher(key).matches()) {
            throw new ProblemException(Problem.NAME_INVALID, "An Idempotency-Key has 1 to 200 visible characters, got "
                + Spelling.quoted(key) + ".");
        }
        try (InputStream bytes = body.open()) {
            String asked = context.req().getMethod() + " " + context.path() + "?" + context.req().getQueryString();
            return Optional.of(new RepeatKey(admission.who(), key, Fingerprint.of(asked, bytes)));
        }
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

    /** Answers when the work is done, and holds no thread until then. */
    void later(Supplier<CompletableFuture<Void>> work) {
        context.future(work);
    }

    /** Answers once something is there or has failed, and holds no thread until then. */
    <T> void answerOnce(CompletableFuture<T> there, PendingAnswer.From<T> making) {
        pending = Optional.of(there.thenApply(from -> () -> making.give(from)));
    }

    /** The answer that is still to be given, where the route has not given it. */
    Optional<CompletableFuture<PendingAnswer>> pending() {
        return pending;
    }

    /** Does work that may block in a thread of the service; for answers that come later. */
    void onServiceThread(Runnable work) {
        context.req().getAsyncContext().start(work);
    }

    /** The answer as the server's own, for those who write without waiting. */
    Response rawResponse() {
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
        return new BufferedOutputStream(new Unended(context.res().getOutputStream()), 32 << 10);
    }

    /** Passes bytes on, but neither flushes nor closes what it passes them to. */
    private static final class Unended extends FilterOutputStream {
        Unended(OutputStream to) {
            super(to);
        }

        @Override
        public void write(byte[] bytes, int offset, int length) throws IOException {
            out.write(bytes, offset, length);
        }

        @Override
        public void flush() {
            // what is sent so far is decided by the size of the answer, not by who writes it
        }

        @Override
        public void close() {
            // a close on the way out of a failure must not look like the end of the answer
        }
    }

    /** Answers with a stream of known length; the caller closes it. */
    OutputStream stream(String contentType, long byteCount) throws IOException {
        context.res().setContentLengthLong(byteCount);
        return stream(contentType);
    }

    /** True where only the head of the answer is wanted. */
    boolean isHead() {
        return context.req().getMethod().equals("HEAD");
    }

    /** Media types offered here, for refusals. */
    static String offered(List<Form> forms) {
        return String.join(", ", forms.stream().map(Form::mediaType).distinct().toList());
    }
}
