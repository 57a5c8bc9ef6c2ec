package surfeit.lab;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;

/**
 * A token on record, with what its secret is known by.
 *
 * @param sha256 SHA-256 of the secret, in hex
 */
public record KeptToken(Token token, String sha256) {

    /** Compares in a time that does not depend on where two hashes differ. */
    boolean hasHash(String other) {
        return MessageDigest.isEqual(sha256.getBytes(StandardCharsets.US_ASCII),
            other.getBytes(StandardCharsets.US_ASCII));
    }
}
