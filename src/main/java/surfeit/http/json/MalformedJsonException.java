package surfeit.http.json;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import surfeit.lab.Fault;
import surfeit.lab.Place;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** A body that is not JSON, or not JSON this service takes; says where reading had to stop, where that is known. */
public final class MalformedJsonException extends RuntimeException {
    private static final String DEPTH_SETTING = "json-depth-max";
    private static final Pattern TOO_DEEP = Pattern.compile("nesting depth .* maximum allowed \\((\\d+)");

    private final transient Place place;
    private final transient Optional<String> setting;

    MalformedJsonException(String message, int line, int column) {
        this(message, new Place(Optional.empty(), OptionalLong.of(line), OptionalInt.of(column), Optional.empty()),
            Optional.empty());
    }

    private MalformedJsonException(String message, Place place, Optional<String> setting) {
        super(message);
        this.place = place;
        this.setting = setting;
    }

    /** JSON that goes beyond a limit; the parser tells which, not where. */
    static MalformedJsonException beyondLimit(String parserMessage) {
        Matcher tooDeep = TOO_DEEP.matcher(parserMessage);
        return tooDeep.find()
            ? new MalformedJsonException("Expected JSON that nests at most " + tooDeep.group(1)
            + " levels deep, found more.", Place.WHOLE,
                Optional.of(DEPTH_SETTING))
            : new MalformedJsonException(JsonFormat.LIMITS_IN_WORDS, Place.WHOLE, Optional.empty());
    }

    /** The setting that could change the outcome, where one could. */
    Optional<String> setting() {
        return setting;
    }

    /** The refusal this is, with line and column of the body, each from 1. */
    public ProblemException refusal() {
        ProblemException refusal = ProblemException.of(List.of(Fault.at(place, Problem.MALFORMED_JSON, getMessage())));
        return setting.map(refusal::withSetting).orElse(refusal);
    }
}
