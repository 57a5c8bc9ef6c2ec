package surfeit.http;

import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Optional;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/**
 * Passes for a browser's event stream, which cannot send a token in a header: each is good for one stream within
 * {@link #VALID}, so that an address that is seen by others is worth nothing. Thread-safe.
 */
interface Tickets {
    Duration VALID = Duration.ofSeconds(60);
    String PREFIX = "tkt_";
    /** Tickets that may wait to be used. Judgement: a page takes one when it opens its stream. */
    int MOST = 10_000;

    /** A ticket as it is shown, once. */
    record Issued(String ticket, Instant expires) {
    }

    /** @throws ProblemException quota-exceeded */
    Issued issue(Admission owner, Instant now);

    /** Whose ticket it is; it cannot be used again. Empty where it is unknown, used, too old, or its owner shut out. */
    Optional<Admission> redeem(String ticket);

    /** A ticket nobody can guess. */
    static String random() {
        final int randomBytes = 32;
        byte[] random = new byte[randomBytes];
        new SecureRandom().nextBytes(random);
        return PREFIX + Base64.getUrlEncoder().withoutPadding().encodeToString(random);
    }

    static String hash(String ticket) {
        return HexFormat.of().formatHex(Fingerprint.sha256(ticket));
    }

    static ProblemException tooMany() {
        return new ProblemException(Problem.QUOTA_EXCEEDED, MOST + " tickets wait to be used already.");
    }
}
