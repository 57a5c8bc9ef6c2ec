package surfeit.http;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import surfeit.element.Spelling;
import surfeit.lab.Expectation;
import surfeit.lab.Occasion;
import surfeit.lab.PageRequest;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.RepeatKey;

/** One request: what it asks for, what it sends, and the answer to it. Not thread-safe. */
final class Exchange {
    private static final String REPEAT_KEY_FIELD = "Idempotency-Key";
    private static final Pattern REPEAT_KEY = Pattern.compile("[\\x21-\\x7E]{1,200}");

    private final Context context;
    private final Form form;
    private final ServiceFacts facts;
    private final Admission admission;
    private final Parameters parameters;
    private final RequestBody body;
    private final Answer answer;
    private final BooleanSupplier reader;
    private Optional<CompletableFuture<PendingAnswer>> pending = Optional.empty();

    /** @throws ProblemException malformed-request, unknown-parameter */
    Exchange(Context context, Route route, Form form, ServiceFacts facts, Admission admission, BooleanSupplier reader) {
        this.context = context;
        this.form = form;
        this.facts = facts;
        this.admission = admission;
        this.reader = reader;
        Optional<String> query = Optional.ofNullable(context.req().getQueryString());
        query.ifPresent(QueryEncoding::require);
        this.body = new RequestBody(context, route, facts);
        this.answer = new Answer(context, route, form, facts);
        this.parameters = new Parameters(query.isEmpty() ? Map.of() : context.queryParamMap(), route.parameters());
    }

    String path(String name) {
        return context.pathParam(name);
    }

    Parameters parameters() {
        return parameters;
    }

    /** What the request sends. */
    RequestBody body() {
        return body;
    }

    /** What it is answered with. */
    Answer answer() {
        return answer;
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
        return Optional.ofNullable(FieldLines.of(context, "Accept-Language")).orElse("");
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
        return Revisions.expectation(FieldLines.of(context, "If-Match"), FieldLines.of(context, "If-None-Match"));
    }

    /** The page asked for of the list this address and its filters name. */
    PageRequest page() {
        return parameters.page(parameters.list(context.path()));
    }

    /** The cursor of the next page; its whole address goes into a Link field. */
    Optional<String> next(Optional<String> key) {
        Optional<String> cursor = key.map(k -> Cursor.of(parameters.list(context.path()), k));
        cursor.ifPresent(text -> answer.header("Link", "<" + address(text) + ">; rel=\"next\""));
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

    /** Whether it has a key under which it may have been done before. */
    boolean mayRepeat() {
        return context.header(REPEAT_KEY_FIELD) != null;
    }

    /** The key under which the request is done only once; empty where the client gives none. */
    Optional<RepeatKey> repeatKey(Body sent) throws IOException {
        String key = context.header(REPEAT_KEY_FIELD);
        if (key == null) {
            return Optional.empty();
        }
        if (!REPEAT_KEY.matcher(key).matches()) {
            throw new ProblemException(Problem.NAME_INVALID, "An Idempotency-Key has 1 to 200 visible characters, got "
                + Spelling.quoted(key) + ".");
        }
        try (InputStream bytes = sent.open()) {
            String asked = context.req().getMethod() + " " + context.path() + "?" + context.req().getQueryString();
            return Optional.of(new RepeatKey(admission.who(), key, Fingerprint.of(asked, bytes)));
        }
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

    /** Media types offered here, for refusals. */
    static String offered(List<Form> forms) {
        return String.join(", ", forms.stream().map(Form::mediaType).distinct().toList());
    }
}
