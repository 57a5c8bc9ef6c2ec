package surfeit.http;

import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/**
 * Passes for a browser's event stream, which cannot send a token in a header: each is good for one stream within
 * {@link #VALID}, so that an address that is seen by others is worth nothing. Kept in memory, by their hash.
 * Thread-safe.
 */
final class EventTickets {
    static final Duration VALID = Duration.ofSeconds(60);
    static final String PREFIX = "tkt_";
    /** Tickets that may wait to be used. Judgement: a page takes one when it opens its stream. */
    private static final int MOST = 10_000;
    private static final int RANDOM_BYTES = 32;
    private static final SecureRandom RANDOM = new SecureRandom();

    private final LongSupplier nanoTime;
    private final Map<String, Kept> byHash = new HashMap<>();

    /** @param nanoTime a clock that never goes back, in nanoseconds from any start */
    EventTickets(LongSupplier nanoTime) {
        this.nanoTime = nanoTime;
    }

    private record Kept(Admission owner, long issuedNanos) {
    }

    /** A ticket as it is shown, once. */
    record Issued(String ticket, Instant expires) {
    }

    /** @throws ProblemException quota-exceeded */
    synchronized Issued issue(Admission owner, Instant now) {
        byHash.values().removeIf(kept -> !isInTime(kept));
        if (byHash.size() >= MOST) {
            throw new ProblemException(Problem.QUOTA_EXCEEDED, MOST + " tickets wait to be used already.");
        }
        byte[] random = new byte[RANDOM_BYTES];
        RANDOM.nextBytes(random);
        String ticket = PREFIX + Base64.getUrlEncoder().withoutPadding().encodeToString(random);
        byHash.put(hash(ticket), new Kept(owner, nanoTime.getAsLong()));
        return new Issued(ticket, now.plus(VALID));
    }

    /** Whose ticket it is; it cannot be used again. Empty where it is unknown, used, too old, or its owner shut out. */
    synchronized Optional<Admission> redeem(String ticket) {
        return Optional.ofNullable(byHash.remove(hash(ticket))).filter(this::isInTime).map(Kept::owner)
            .filter(owner -> owner.stillHolds().getAsBoolean());
    }

    private boolean isInTime(Kept kept) {
        return nanoTime.getAsLong() - kept.issuedNanos() < VALID.toNanos();
    }

    private static String hash(String ticket) {
        return HexFormat.of().formatHex(Fingerprint.sha256(ticket));
    }
}
