package surfeit.lab;

import java.time.Instant;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The right to use the service under a name, without the secret that proves it.
 *
 * @param id      {@code tok_0001}
 * @param name    whose it is or what uses it; stands as who in revisions, audit and events
 * @param scopes  what it may be used for, at least one
 * @param created who made it, and when
 * @param expires from when on it is not valid any more
 * @param revoked who took it back, and when, if somebody did
 */
public record Token(String id, String name, Set<TokenScope> scopes, Occasion created, Instant expires,
                    Optional<Occasion> revoked) {
    public Token {
        if (scopes.isEmpty()) {
            throw new IllegalArgumentException("A token is for at least one scope, got none.");
        }
        scopes = Collections.unmodifiableSet(EnumSet.copyOf(scopes));
    }

    /** True where it is valid at a time. */
    public boolean isValid(Instant when) {
        return revoked.isEmpty() && when.isBefore(expires);
    }

    /** Refuses what the token is not for. @throws ProblemException scope-missing */
    public void require(TokenScope scope) {
        if (!scopes.contains(scope)) {
            throw new ProblemException(Problem.SCOPE_MISSING, "This needs the scope " + scope.word() + "; the token \""
                + name
                + "\" has " + words() + ".");
        }
    }

    /** Its scopes in words: {@code read, write}. */
    public String words() {
        return scopes.stream().map(TokenScope::word).collect(Collectors.joining(", "));
    }
}
