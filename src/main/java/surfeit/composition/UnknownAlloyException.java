package surfeit.composition;

import java.util.List;
import surfeit.element.Spelling;

/** An id stood where an alloy of the catalogue was expected. */
public final class UnknownAlloyException extends IllegalArgumentException {
    private final String id;
    private final List<String> nearest;

    UnknownAlloyException(String id, List<String> nearest) {
        super("Expected the id of an alloy such as ag-cu-eutectic, got " + Spelling.quoted(id)
            + (nearest.isEmpty() ? "." : "; nearest known: " + String.join(", ", nearest) + "."));
        this.id = id;
        this.nearest = List.copyOf(nearest);
    }

    /** The id as it came. */
    public String id() {
        return id;
    }

    /** Ids most likely meant, nearest first; may be empty. */
    public List<String> nearest() {
        return nearest;
    }
}
