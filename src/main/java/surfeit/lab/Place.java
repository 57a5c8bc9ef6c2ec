package surfeit.lab;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * Where in an upload something stands: an RFC 6901 pointer in JSON, or line and column in a table, each from 1.
 */
public record Place(Optional<String> pointer, OptionalLong line, OptionalInt column, Optional<String> columnName) {
    /** Nowhere in particular: the upload as a whole. */
    public static final Place WHOLE =
        new Place(Optional.empty(), OptionalLong.empty(), OptionalInt.empty(), Optional.empty());

    public static Place pointer(String pointer) {
        return new Place(Optional.of(pointer), OptionalLong.empty(), OptionalInt.empty(), Optional.empty());
    }

    public static Place line(long line) {
        return new Place(Optional.empty(), OptionalLong.of(line), OptionalInt.empty(), Optional.empty());
    }

    /** A pointer within one line of an upload that has one JSON object a line. */
    public static Place pointerInLine(long line, String pointer) {
        return new Place(Optional.of(pointer), OptionalLong.of(line), OptionalInt.empty(), Optional.empty());
    }

    public static Place cell(long line, int column, String columnName) {
        return new Place(Optional.empty(), OptionalLong.of(line), OptionalInt.of(column), Optional.of(columnName));
    }

    public static Place column(int column, String columnName) {
        return new Place(Optional.empty(), OptionalLong.empty(), OptionalInt.of(column), Optional.of(columnName));
    }
}
