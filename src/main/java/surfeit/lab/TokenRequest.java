package surfeit.lab;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;

/**
 * The token somebody wants.
 *
 * @param expires from when on it is not to be valid; a year after it is made where nothing is said
 */
public record TokenRequest(String name, Set<TokenScope> scopes, Optional<Instant> expires) {
    /** How long a token is valid unless something else is said. */
    public static final Duration LIFETIME = Duration.ofDays(365);
    /** Longest validity: a forgotten token ends some day. Judgement. */
    public static final Duration LIFETIME_MAX = Duration.ofDays(3650);
    /** Longest name, in characters. Judgement: it stands in every row of the audit. */
    private static final int NAME_LENGTH_MAX = 64;

    /** Who acts where no token is asked for; no token can be named so. */
    public static final String ANYONE = "anyone";

    public TokenRequest {
        scopes = Set.copyOf(scopes);
    }

    /** @throws ProblemException name-invalid, value-out-of-range */
    Instant requireUsable(Instant now) {
        Optional<String> wrong = Names.faultOf("token's name", name);
        if (wrong.isEmpty() && (name.length() > NAME_LENGTH_MAX || name.equals(ANYONE) || !name.equals(name.strip()))) {
            wrong = Optional.of("A token's name has at most " + NAME_LENGTH_MAX
                + " characters, no blank at either end, and is not \""
                + ANYONE + "\".");
        }
        if (wrong.isPresent()) {
            throw new ProblemException(Problem.NAME_INVALID, wrong.get());
        }
        if (scopes.isEmpty()) {
            throw new ProblemException(Problem.VALUE_OUT_OF_RANGE,
                "Expected at least one scope for the token, got none.");
        }
        Instant until = expires.orElse(now.plus(LIFETIME));
        if (!until.isAfter(now) || until.isAfter(now.plus(LIFETIME_MAX))) {
            throw new ProblemException(Problem.VALUE_OUT_OF_RANGE, "Expected a token to expire after now (" + now
                + ") and within "
                + LIFETIME_MAX.toDays() + " days, got " + until + ".");
        }
        return until;
    }
}
