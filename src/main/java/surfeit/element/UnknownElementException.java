package surfeit.element;

import java.util.Optional;

/** A text stood where an element symbol was expected. */
public final class UnknownElementException extends IllegalArgumentException {
    private final String text;
    private final transient Optional<String> nearest;

    public UnknownElementException(String text, Optional<String> nearest) {
        super("Expected an element symbol such as Ag or Cu, got \"" + text + "\""
            + nearest.map(symbol -> "; nearest known: " + symbol + ".").orElse("."));
        this.text = text;
        this.nearest = nearest;
    }

    public String text() {
        return text;
    }

    public Optional<String> nearest() {
        return nearest;
    }
}
