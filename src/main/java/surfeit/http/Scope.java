package surfeit.http;

import java.util.Locale;
import java.util.Optional;
import surfeit.lab.TokenScope;

/** What a caller must be allowed to do at an address; none of them includes another. */
public enum Scope {
    /** Anyone may ask: it tells nothing of the lab's work. */
    OPEN,
    READ,
    WRITE,
    CORRECT,
    ADMIN,
    METRICS;

    /** The scope a token needs here; empty where none is needed. */
    Optional<TokenScope> needed() {
        return this == OPEN ? Optional.empty() : Optional.of(TokenScope.valueOf(name()));
    }

    /** The word tokens and documents use. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
