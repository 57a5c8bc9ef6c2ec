package surfeit.http;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Base64;

/** Short names for long contents. */
final class Fingerprint {
    /** 72 bits: two contents share a name by chance once in 10^21 pairs. */
    private static final int SHORT_BYTES = 9;

    private Fingerprint() {
    }

    static byte[] sha256(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("This Java lacks SHA-256.", e);
        }
    }

    static byte[] sha256(String text) {
        return sha256(text.getBytes(StandardCharsets.UTF_8));
    }

    /** Twelve characters fit for an ETag. */
    static String shortName(byte[] bytes) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(Arrays.copyOf(sha256(bytes), SHORT_BYTES));
    }

    static String shortName(String text) {
        return shortName(text.getBytes(StandardCharsets.UTF_8));
    }
}
