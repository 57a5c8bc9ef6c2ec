package surfeit.storage;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 of bytes that come in pieces. Not thread-safe. */
final class Sha256 {
    private final MessageDigest digest;

    Sha256() {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256.", e);
        }
    }

    Sha256 add(byte[] bytes) {
        return add(bytes, bytes.length);
    }

    Sha256 add(byte[] bytes, int length) {
        digest.update(bytes, 0, length);
        return this;
    }

    /** The hash in hex of all that was added since the last time. */
    String take() {
        return HexFormat.of().formatHex(digest.digest());
    }
}
