package surfeit.composition;

/** A composition that cannot exist or cannot be used; the message says what was expected and what came. */
public final class CompositionException extends IllegalArgumentException {
    /** What is wrong, for a program that must tell the cases apart. */
    public enum Kind { NOT_CLOSABLE, NOT_SUMMING_TO_ONE, TOO_FEW_ELEMENTS, VALUE_OUT_OF_RANGE }

    private final Kind kind;

    public CompositionException(String message) {
        this(Kind.NOT_CLOSABLE, message);
    }

    public CompositionException(Kind kind, String message) {
        super(message);
        this.kind = kind;
    }

    public Kind kind() {
        return kind;
    }
}
