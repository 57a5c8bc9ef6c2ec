package surfeit.http.json;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import surfeit.lab.Fault;
import surfeit.lab.Place;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** A body that is not JSON; says where reading had to stop. */
public final class MalformedJsonException extends RuntimeException {
    private final int line;
    private final int column;

    MalformedJsonException(String message, int line, int column) {
        super(message);
        this.line = line;
        this.column = column;
    }

    /** The refusal this is, with line and column of the body, each from 1. */
    public ProblemException refusal() {
        return ProblemException.of(List.of(fault(0)));
    }

    /** The same as a fault; {@code linesBefore} counts the lines of the body before the document. */
    Fault fault(long linesBefore) {
        Place place = new Place(Optional.empty(), OptionalLong.of(linesBefore + line), OptionalInt.of(column),
            Optional.empty());
        return Fault.at(place, Problem.MALFORMED_JSON, getMessage());
    }
}
