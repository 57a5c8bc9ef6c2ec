package surfeit.lab;

import java.util.Locale;
import java.util.Optional;
import surfeit.composition.CompositionException;

/**
 * Every way a request can be refused: the one catalogue behind all answers, the problem pages and the documents.
 *
 * <p>The status is the number HTTP uses; a command line takes it as the kind of refusal.
 */
public enum Problem {
    UNREADABLE_TABLE(422, "The table cannot be read",
        "The upload is not a table this service can read without guessing: no header, columns that differ from row to "
            + "row, a column twice, a thousands separator, or a character set that does not fit.",
        "Correct the named line and column, or state the dialect with delimiter, decimal and charset."),
    MIXED_DECIMAL_MARKS(422, "Two decimal marks in one file",
        "Some numbers use a decimal comma and others a decimal point. Taking either would change values up to a "
            + "hundredfold.",
        "Write all numbers with one mark, or state it with decimal."),
    DUPLICATE_SPOT(422, "One spot twice with different values",
        "Two rows of the upload have the same session, label and acquired time, but different values.",
        "Give each spot its own label, or state when each was acquired."),
    NAME_INVALID(422, "A name cannot be used",
        "A sample is named with 1 to 64 of the characters A-Z a-z 0-9 . _ - and not with dots only; other names have 1 "
            + "to 200 characters, none of them a control character or invisible.",
        "Choose another name."),
    UNKNOWN_ELEMENT(422, "Not an element",
        "A symbol does not name an element of the periodic table.",
        "Correct the symbol; capital and small letters matter (Co is cobalt, CO is not an element)."),
    VALUE_OUT_OF_RANGE(422, "A value is impossible",
        "A value lies outside what can be measured or stated for its field, or is not one of its words. Concentrations "
            + "lie between -10 and 150 %.",
        "Correct the value, and check its unit."),
    UNIT_MISSING(422, "No unit is stated",
        "Concentrations come in at% or wt%, and nothing says which. The two differ up to sixfold, so none is assumed.",
        "State the unit in the column heads, in the body, or with unit."),
    TIME_WITHOUT_ZONE(422, "A local time without a zone",
        "A time is given without an offset from UTC, and the request names no time zone.",
        "Add the offset (2026-11-20T14:03:00+01:00), or name the zone with time_zone."),
    REASON_REQUIRED(422, "A reason is missing",
        "What was measured is never overwritten silently: a correction or withdrawal says why.",
        "Give a reason in words."),
    ALLOY_UNKNOWN(422, "The alloy is not in the catalogue",
        "The sample names an alloy that the catalogue does not list.",
        "Choose one of /v1/alloys, add the alloy, or state the nominal composition itself."),
    NOMINAL_INCOMPLETE(422, "The nominal composition does not reach 100 %",
        "The parts of a nominal composition add up to 100 % within 1 %, or one element is the balance.",
        "Add the missing elements, or write \"balance\" for the main one."),
    TOO_FEW_ELEMENTS(422, "Too few elements to compare",
        "Enrichment is a question of shares: at least two elements of the nominal must be left after exclusions and "
            + "be measured.",
        "Measure or keep a second element of the nominal."),
    SPOT_ALREADY_RECORDED(409, "The spot is recorded with other values",
        "A spot with this session, label and acquired time is on record, and its values differ. Recorded values are "
            + "never overwritten by an upload.",
        "Correct the recorded spot and say why, or give the new measurement its own label or time."),
    IDEMPOTENCY_KEY_IN_PROGRESS(409, "The same request is still running",
        "A request with this Idempotency-Key has not been answered yet.",
        "Send it again later; the answer will be that of the first."),
    IDEMPOTENCY_KEY_REUSED(422, "The key belongs to another request",
        "This Idempotency-Key was used within seven days with another method, path or body.",
        "Take a new key for a new request."),
    REVISION_MISMATCH(412, "It was changed in the meantime",
        "The revision named in If-Match is not the present one.",
        "Read it again, and repeat the change on what is there now."),
    REVISION_REQUIRED(428, "The change needs If-Match",
        "It exists already with other content; a change must name the revision it starts from.",
        "Read it, and send its ETag in If-Match."),
    CURSOR_MISMATCH(400, "The cursor belongs to another list",
        "A cursor continues the list it came from, with the same filters.",
        "Start the list again without a cursor."),
    UNKNOWN_PARAMETER(400, "An unknown name",
        "A key of the body or a parameter of the address is not known here; a mistyped name is refused rather than "
            + "ignored.",
        "Use the name the answer suggests."),
    MALFORMED_JSON(400, "Not JSON of the expected form",
        "The body is not valid JSON, names a key twice, lacks a required key, or has a value of another kind.",
        "Correct the place the answer names."),
    MALFORMED_REQUEST(400, "Not a readable HTTP request",
        "The request breaks the rules of HTTP or of addresses, so that nothing can be said of what it asks for.",
        "Check how the client builds its requests: encoding of the address, header fields, Content-Length, compression."),
    REQUEST_TIMEOUT(408, "The body came too slowly",
        "The body stalled or took longer than allowed.",
        "Send it again over a steadier connection, or in parts."),
    UPLOAD_TOO_LARGE(413, "The upload is too large",
        "The body, or what it inflates to, exceeds a limit.",
        "Split the upload, or raise the setting the answer names."),
    ADDRESS_TOO_LONG(414, "The address is too long",
        "The address with its parameters exceeds a limit.",
        "Shorten the parameters."),
    HEADERS_TOO_LARGE(431, "The header fields are too large",
        "The header fields of the request exceed a limit.",
        "Send fewer or shorter header fields."),
    UNSUPPORTED_MEDIA_TYPE(415, "The body's media type is not read here",
        "This address reads other media types than the one sent.",
        "Send one of the media types the answer names."),
    NOT_ACCEPTABLE(406, "None of the wanted forms exists",
        "The thing exists, but in none of the forms that Accept or the suffix asks for.",
        "Ask for one of the forms the answer names."),
    TOKEN_MISSING(401, "A token is needed",
        "This service answers only to those who show a token.",
        "Send Authorization: Bearer lab_..., or the token as the password of Basic."),
    TOKEN_REJECTED(401, "The token is not valid",
        "The token is unknown, expired or revoked.",
        "Ask whoever runs the service for a new token."),
    SCOPE_MISSING(403, "The token does not allow this",
        "The token is valid but lacks the scope this needs, or a page of another site sent the request.",
        "Ask for a token with the scope the answer names; send changes from a program or from the service's own pages."),
    NOT_FOUND(404, "There is no such thing",
        "Nothing is recorded under this address.",
        "Check the name; lists show what exists."),
    METHOD_NOT_ALLOWED(405, "The method does not exist here",
        "The address exists, but not with this method.",
        "Use one of the methods in Allow."),
    QUOTA_EXCEEDED(429, "Too many requests",
        "The token sends more requests than it may, or more than the service can take.",
        "Wait as long as Retry-After says."),
    INTERNAL(500, "The service failed",
        "Something went wrong that is not the request's fault. Nothing of the request was stored.",
        "Try again; if it stays, report the request_id to whoever runs the service."),
    STORAGE_FULL(507, "The disk is full",
        "The record could not be written. Nothing of the request was stored; reading still works.",
        "Free space on the disk that holds the data folder or the database, and send the request again."),
    SHUTTING_DOWN(503, "The service is stopping",
        "The service is about to stop and takes no more work.",
        "Try again in a moment."),
    OVERLOADED(503, "Too much waits to be recorded",
        "More changes wait for their turn to be recorded than the service holds at a time. Nothing of the request was "
            + "stored.",
        "Send the request again after as many seconds as Retry-After says; send fewer at the same time, or more spots in "
            + "one request."),
    STORAGE_UNAVAILABLE(503, "The record cannot be used now",
        "The file or database that holds the record is locked by another program, cannot be reached, read or written, or "
            + "is damaged. Nothing of the request was stored, unless the answer's detail says that nobody knows.",
        "Send the request again after as many seconds as Retry-After says. If it stays so, tell whoever runs the service "
            + "what the answer's detail says.");

    private final int status;
    private final String title;
    private final String explanation;
    private final String whatToDo;

    Problem(int status, String title, String explanation, String whatToDo) {
        this.status = status;
        this.title = title;
        this.explanation = explanation;
        this.whatToDo = whatToDo;
    }

    /** The stable name in answers and addresses: {@code spot-already-recorded}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The problem with this code, if there is one. */
    public static Optional<Problem> ofCode(String code) {
        for (Problem problem : values()) {
            if (problem.code().equals(code)) {
                return Optional.of(problem);
            }
        }
        return Optional.empty();
    }

    /** The problem that a composition which cannot be, or cannot be used, is told as. */
    public static Problem of(CompositionException cause) {
        return switch (cause.kind()) {
            case TOO_FEW_ELEMENTS -> TOO_FEW_ELEMENTS;
            case NOT_SUMMING_TO_ONE -> NOMINAL_INCOMPLETE;
            case NOT_CLOSABLE, VALUE_OUT_OF_RANGE, UNREADABLE -> VALUE_OUT_OF_RANGE;
        };
    }

    public int status() {
        return status;
    }

    public String title() {
        return title;
    }

    /** One paragraph: what happened and why it is refused. */
    public String explanation() {
        return explanation;
    }

    public String whatToDo() {
        return whatToDo;
    }
}
