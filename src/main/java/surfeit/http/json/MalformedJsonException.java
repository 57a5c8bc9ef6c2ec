package surfeit.http.json;

/** A body that is not JSON; says where reading had to stop. */
public final class MalformedJsonException extends RuntimeException {
    private final int line;
    private final int column;

    MalformedJsonException(String message, int line, int column) {
        super(message);
        this.line = line;
        this.column = column;
    }

    /** Line of the body, from 1. */
    public int line() {
        return line;
    }

    /** Column of that line, from 1. */
    public int column() {
        return column;
    }
}
