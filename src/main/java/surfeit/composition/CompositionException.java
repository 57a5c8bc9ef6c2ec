package surfeit.composition;

/** A composition that cannot exist or cannot be used; the message says what was expected and what came. */
public final class CompositionException extends IllegalArgumentException {
    /** What is wrong, for a program that must tell the cases apart. */
    public enum Kind {
        /** The parts add up to nothing, so no fractions can be made of them. */
        NOT_CLOSABLE,
        /** A nominal that does not reach 100 %, or passes it. */
        NOT_SUMMING_TO_ONE,
        /** Fewer than two elements are left to compare. */
        TOO_FEW_ELEMENTS,
        /** A fraction outside 0 to 1, or a range upside down. */
        VALUE_OUT_OF_RANGE,
        /** A text that is not a composition, or one that could mean two things. */
        UNREADABLE
    }

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
