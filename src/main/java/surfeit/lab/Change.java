package surfeit.lab;

/** What a statement about a thing did, and the thing as it is now. */
public record Change<T>(Kind kind, T now) {
    /** Created, changed, or the same as before. */
    public enum Kind { CREATED, CHANGED, UNCHANGED }
}
