package surfeit.http;

import java.util.Locale;

/** What a caller must be allowed to do at an address; none of them includes another. */
public enum Scope {
    /** Anyone may ask: it tells nothing of the lab's work. */
    OPEN,
    READ,
    WRITE,
    CORRECT,
    ADMIN;

    /** The word tokens and documents use. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
