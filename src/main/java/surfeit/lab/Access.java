package surfeit.lab;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;

/**
 * Who may use the record: makes, lists, checks and revokes tokens. Thread-safe.
 *
 * <p>Where no other program can change the record, tokens are kept in memory beside it, so that a request is checked
 * without asking it. A record that is shared is asked at each request: a token that another program took back is not
 * valid any more from that moment on.
 */
public final class Access {
    /**
     * Hex digits by which a token is looked up before its whole hash is compared; the hash of a guess tells nothing of
     * a token.
     */
    private static final int LOOKED_UP_BY = 16;

    /** How old what is known of a shared record may be for an answer that goes on for long. Judgement. */
    private static final Duration LATELY = Duration.ofSeconds(1);

    private final Store store;
    private final AtomicReference<Instant> asked = new AtomicReference<>(Instant.EPOCH);
    private final AtomicReference<Optional<Map<String, KeptToken>>> known = new AtomicReference<>(Optional.empty());

    /** Tokens are never removed: once one was made, that stays so. */
    private volatile boolean made;

    Access(Store store) {
        this.store = store;
    }

    /** True until the first token is made: nobody has to show one. An expired or revoked token still counts as made. */
    public boolean isOpen() {
        if (made) {
            return false;
        }
        made = store.isShared() ? store.read(ReadAccess::hasTokens) : !tokensByHash().isEmpty();
        return !made;
    }

    /** True where at least one token is valid at a time. */
    public boolean hasValidToken(Instant when) {
        return store.read(ReadAccess::tokens).stream().anyMatch(kept -> kept.token().isValid(when));
    }

    /**
     * The valid token a secret proves.
     *
     * @throws ProblemException token-rejected
     */
    public Token admit(String secret, Instant when) {
        Token token = find(secret).orElseThrow(() -> rejected("The token is not known here."));
        if (token.revoked().isPresent()) {
            throw rejected("The token \"" + token.name() + "\" was revoked at " + token.revoked().get().when() + ".");
        }
        if (!token.isValid(when)) {
            throw rejected("The token \"" + token.name() + "\" expired at " + token.expires() + ".");
        }
        return token;
    }

    /**
     * True while a token that was admitted once is neither revoked nor expired; for answers that go on for long. Of a record
     * that is shared this is what held at most a second ago, or when it could be asked last.
     */
    public boolean isValid(String tokenId, Instant when) {
        Optional<KeptToken> token = byId(lately(when), tokenId);
        if (token.isEmpty() && store.isShared()) {
            token = byId(load(), tokenId);
        }
        return token.filter(kept -> kept.token().isValid(when)).isPresent();
    }

    private static Optional<KeptToken> byId(Map<String, KeptToken> tokens, String id) {
        return tokens.values().stream().filter(kept -> kept.token().id().equals(id)).findFirst();
    }

    /** As {@link #isOpen}, for answers that go on for long. */
    public boolean isStillOpen(Instant when) {
        return lately(when).isEmpty();
    }

    private Map<String, KeptToken> lately(Instant when) {
        if (store.isShared() && Duration.between(asked.get(), when).abs().compareTo(LATELY) > 0) {
            asked.set(when);
            try {
                load();
            } catch (ProblemException e) {
                if (known.get().isEmpty()) {
                    throw e;
                }
            }
        }
        return tokensByHash();
    }

    /** Where passes for event streams are kept, where that is not in this program's memory. */
    public Optional<SharedTickets> sharedTickets() {
        return store.sharedTickets();
    }

    private Optional<Token> find(String secret) {
        if (!TokenSecret.hasForm(secret)) {
            return Optional.empty();
        }
        String hash = TokenSecret.sha256(secret);
        String beginning = hash.substring(0, LOOKED_UP_BY);
        Optional<KeptToken> found = store.isShared() ? store.read(access -> access.token(beginning))
            : Optional.ofNullable(tokensByHash().get(beginning));
        return found.filter(kept -> kept.hasHash(hash)).map(KeptToken::token);
    }

    private static ProblemException rejected(String detail) {
        return new ProblemException(Problem.TOKEN_REJECTED, detail);
    }

    /**
     * Makes a token.
     *
     * @param random {@value TokenSecret#RANDOM_BYTES} bytes nobody can guess
     * @throws ProblemException name-invalid, value-out-of-range
     */
    public synchronized IssuedToken issue(TokenRequest wanted, byte[] random, Occasion occasion) {
        Instant expires = wanted.requireUsable(occasion.when());
        String secret = TokenSecret.of(random);
        Token made = store.write(access -> {
            requireOwnName(access.tokens(), wanted.name(), occasion.when());
            Token token = access.addToken(wanted.name(), wanted.scopes(), expires, TokenSecret.sha256(secret),
                occasion);
            access.audit(occasion, "token made", Optional.empty(), token.id() + " \"" + token.name() + "\": scopes "
                + token.words()
                + "; expires " + token.expires());
            return token;
        });
        forget();
        return new IssuedToken(made, secret);
    }

    /** Two valid tokens of one name could not be told apart in the record. */
    private static void requireOwnName(List<KeptToken> tokens, String name, Instant when) {
        tokens.stream().map(KeptToken::token).filter(token -> token.name().equals(name) && token.isValid(when))
            .findFirst()
            .ifPresent(other -> {
                throw new ProblemException(Problem.NAME_INVALID, "The valid token " + other.id() + " is named \"" + name
                    + "\" already; revoke it first, or choose another name.");
            });
    }

    /** All tokens in the order they were made, expired and revoked ones too. */
    public Page<Token> tokens(PageRequest page) {
        long after = page.after().map(Lookups::tokenKey).orElse(0L);
        List<Token> rest = store.read(ReadAccess::tokens).stream().map(KeptToken::token)
            .filter(token -> number(token.id()) > after).limit(page.size() + 1L).toList();
        return Page.of(rest, page.size(), Token::id);
    }

    public Token token(String id) {
        return store.read(access -> Lookups.token(access, id));
    }

    /** Takes a token back; again, it changes nothing. */
    public synchronized Token revoke(String id, Occasion occasion) {
        Token revoked = store.write(access -> {
            Token token = Lookups.token(access, id);
            if (token.revoked().isPresent()) {
                return token;
            }
            access.revokeToken(number(id), occasion);
            access.audit(occasion, "token revoked", Optional.empty(), id + " \"" + token.name() + "\"");
            return Lookups.token(access, id);
        });
        forget();
        return revoked;
    }

    private static long number(String id) {
        return PublicId.number(PublicId.TOKEN, id).orElseThrow();
    }

    private void forget() {
        known.set(Optional.empty());
    }

    private Map<String, KeptToken> tokensByHash() {
        return known.get().orElseGet(this::load);
    }

    private synchronized Map<String, KeptToken> load() {
        Map<String, KeptToken> byHash = new HashMap<>();
        for (KeptToken kept : store.read(ReadAccess::tokens)) {
            byHash.put(kept.sha256().substring(0, LOOKED_UP_BY), kept);
        }
        known.set(Optional.of(byHash));
        return byHash;
    }
}
