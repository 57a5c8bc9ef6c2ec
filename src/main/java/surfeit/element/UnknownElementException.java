package surfeit.element;

import java.util.Optional;

/** A text stood where an element symbol was expected. */
public final class UnknownElementException extends IllegalArgumentException {
    private final String text;
    private final String nearestOrEmpty;

    public UnknownElementException(String text, Optional<String> nearest) {
        super("Expected an element symbol such as Ag or Cu, got " + Spelling.quoted(text)
            + nearest.map(symbol -> "; nearest known: " + symbol + ".").orElse("."));
        this.text = text;
        this.nearestOrEmpty = nearest.orElse("");
    }

    /** The text as it came. */
    public String text() {
        return text;
    }

    /** The symbol most likely meant, if one is near. */
    public Optional<String> nearest() {
        return Optional.of(nearestOrEmpty).filter(symbol -> !symbol.isEmpty());
    }
}
