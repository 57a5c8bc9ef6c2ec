package surfeit.http.json;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import java.io.IOException;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import surfeit.composition.Percent;
import surfeit.intake.Refusal;
import surfeit.lab.Problem;

/**
 * One JSON document, read token by token without building a tree. Not thread-safe.
 *
 * <p>Values of the wrong kind, unknown keys and keys given twice become faults at their place and reading goes on;
 * only text that is not JSON at all ends it. Each method reads the value the parser stands on.
 */
final class JsonInput {
    /** Reads one element of an array. */
    interface Item {
        void read() throws IOException;
    }

    /** Reads the value under one key of an object whose keys are free. */
    interface Entry {
        void read(String key) throws IOException;
    }

    /** What the parser adds for whoever programs with it. */
    private static final Pattern OWN_NAMES =
        Pattern.compile(": enable `.*| \\(not recognized as one since .*| \\(code [^()]*\\)");

    private final JsonParser parser;
    private final JsonFaults faults;

    JsonInput(JsonParser parser, JsonFaults faults) {
        this.parser = parser;
        this.faults = faults;
    }

    /** Steps to the first value; empty bodies are refused. */
    void start() throws IOException {
        if (parser.nextToken() == null) {
            throw new MalformedJsonException("Expected a JSON document, got an empty body.", 1, 1);
        }
    }

    /** Makes sure that nothing follows the document. */
    void end() throws IOException {
        if (parser.nextToken() != null) {
            JsonLocation at = parser.currentTokenLocation();
            throw new MalformedJsonException("Expected the end of the document, got more after it.", at.getLineNr(),
                at.getColumnNr());
        }
    }

    /** Reads an object by its table of keys. */
    <T> boolean object(Keys<T> keys, T target) throws IOException {
        if (!isObject()) {
            wrongKind("an object (" + keys.shape() + ")");
            return false;
        }
        long seen = 0;
        while (parser.nextToken() == JsonToken.FIELD_NAME) {
            String name = parser.currentName();
            Keys.Key<T> key = keys.get(name);
            parser.nextToken();
            if (key == null) {
                fault(Problem.UNKNOWN_PARAMETER, keys.unknown(name));
                skip();
            } else if ((seen & 1L << key.index()) != 0) {
                fault(Problem.MALFORMED_JSON, "\"" + name + "\" stands twice in one object.");
                skip();
            } else {
                seen |= 1L << key.index();
                if (parser.currentToken() != JsonToken.VALUE_NULL || keys.readsNull()) {
                    key.reader().read(this, target);
                }
            }
        }
        return true;
    }

    /** Reads an object whose keys are free, such as element symbols. */
    void entries(String shape, Entry entry) throws IOException {
        if (!isObject()) {
            wrongKind(shape);
            return;
        }
        while (parser.nextToken() == JsonToken.FIELD_NAME) {
            String name = parser.currentName();
            parser.nextToken();
            entry.read(name);
        }
    }

    void array(String shape, Item item) throws IOException {
        if (parser.currentToken() != JsonToken.START_ARRAY) {
            wrongKind(shape);
            return;
        }
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            item.read();
        }
    }

    boolean isObject() {
        return parser.currentToken() == JsonToken.START_OBJECT;
    }

    boolean isText() {
        return parser.currentToken() == JsonToken.VALUE_STRING;
    }

    boolean isNumber() {
        return parser.currentToken().isNumeric();
    }

    boolean isNull() {
        return parser.currentToken() == JsonToken.VALUE_NULL;
    }

    /** The characters of a text or a number exactly as they came: {@code 78.80} stays {@code 78.80}. */
    String asWritten() throws IOException {
        return parser.getText();
    }

    Optional<String> text() throws IOException {
        if (!isText()) {
            wrongKind("a text");
            return Optional.empty();
        }
        String text = parser.getText();
        if (text.indexOf(0) >= 0) {
            fault(Problem.VALUE_OUT_OF_RANGE, "Expected a text without zero characters (\\u0000).");
            return Optional.empty();
        }
        if (text.codePoints().anyMatch(JsonInput::isHalf)) {
            fault(Problem.VALUE_OUT_OF_RANGE, "Expected a text of whole characters, got half of a surrogate pair.");
            return Optional.empty();
        }
        return Optional.of(text);
    }

    /** Half of a character, which no UTF-8 can hold: who reads the answer might not be able to read any of it. */
    private static boolean isHalf(int codePoint) {
        return codePoint >= Character.MIN_SURROGATE && codePoint <= Character.MAX_SURROGATE;
    }

    OptionalDouble number(String unit) throws IOException {
        if (!isNumber()) {
            wrongKind("a number" + (unit.isEmpty() ? "" : " in " + unit));
            return OptionalDouble.empty();
        }
        double value = parser.getDoubleValue();
        if (Double.isInfinite(value)) {
            fault(Problem.VALUE_OUT_OF_RANGE, "Expected a number" + (unit.isEmpty() ? "" : " in " + unit)
                + " a computer can hold.");
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(value);
    }

    /** A number of percent as the fraction nearest to it, read from its digits and not from a rounded double. */
    OptionalDouble percentAsFraction() throws IOException {
        OptionalDouble percent = number("percent");
        return percent.isEmpty() || percent.getAsDouble() == 0
            ? percent : OptionalDouble.of(Percent.toFraction(parser.getDecimalValue()));
    }

    Optional<Boolean> yesOrNo() throws IOException {
        if (parser.currentToken() != JsonToken.VALUE_TRUE && parser.currentToken() != JsonToken.VALUE_FALSE) {
            wrongKind("true or false");
            return Optional.empty();
        }
        return Optional.of(parser.getBooleanValue());
    }

    void wrongKind(String expected) throws IOException {
        fault(Problem.MALFORMED_JSON, "Expected " + expected + ", got " + kind() + ".");
        skip();
    }

    private String kind() throws IOException {
        return switch (parser.currentToken()) {
            case START_OBJECT -> "an object";
            case START_ARRAY -> "a list";
            case VALUE_STRING -> "the text \"" + JsonFaults.shown(parser.getText()) + "\"";
            case VALUE_NULL -> "null";
            default -> parser.getText();
        };
    }

    /** Passes over the value, whatever it is. */
    void skip() throws IOException {
        parser.skipChildren();
    }

    /** Notes a fault of the value the parser stands on. */
    void fault(Problem code, String detail) throws IOException {
        faults.add(pointer(), code, scalar(), detail);
    }

    /** Notes that the value the parser stands on is refused. */
    void fault(Refusal refusal) throws IOException {
        faults.add(pointer(), scalar(), refusal);
    }

    private String scalar() throws IOException {
        return parser.currentToken().isScalarValue() ? parser.getText() : "";
    }

    /** Notes that a key is missing from the object at the pointer. */
    void missing(String objectPointer, String key, Problem code, String detail) {
        faults.add(objectPointer + "/" + key, code, "", detail);
    }

    String pointer() {
        return parser.getParsingContext().pathAsPointer().toString();
    }

    JsonFaults faults() {
        return faults;
    }

    /** The same place of the same document, with another account of its faults. */
    JsonInput withFaults(JsonFaults others) {
        return new JsonInput(parser, others);
    }

    /** A message of the parser's without its own names for things. */
    static MalformedJsonException refused(JsonProcessingException cause) {
        JsonLocation at = cause.getLocation();
        int line = at == null ? 1 : at.getLineNr();
        int column = at == null ? 1 : at.getColumnNr();
        if (cause instanceof StreamConstraintsException) {
            return MalformedJsonException.beyondLimit(cause.getOriginalMessage());
        }
        String message = cause instanceof JsonEOFException || !(cause instanceof JsonParseException)
            ? "the text ends too early" : OWN_NAMES.matcher(cause.getOriginalMessage()).replaceAll("");
        return new MalformedJsonException("Expected JSON in UTF-8, got something else: " + message + ".", line, column);
    }
}
