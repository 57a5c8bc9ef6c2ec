package surfeit.lab;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.HexFormat;
import java.util.regex.Pattern;

/**
 * The text that proves a token: {@code lab_} and 32 random bytes in the 64 characters of RFC 4648, section 5.
 *
 * <p>Only its SHA-256 is kept. A fast hash is enough, since 256 random bits cannot be guessed (NIST SP 800-63B asks for
 * 112 bits before it drops salt and slow hashing for look-up secrets).
 */
public final class TokenSecret {
    /** Random bytes in a token. */
    public static final int RANDOM_BYTES = 32;
    private static final String PREFIX = "lab_";
    private static final Pattern FORM = Pattern.compile(PREFIX + "[A-Za-z0-9_-]{43}");

    private TokenSecret() {
    }

    /** The token these random bytes make. */
    static String of(byte[] random) {
        if (random.length != RANDOM_BYTES) {
            throw new IllegalArgumentException("A token is made of " + RANDOM_BYTES + " random bytes, got "
                + random.length + ".");
        }
        return PREFIX + Base64.getUrlEncoder().withoutPadding().encodeToString(random);
    }

    /** True for a text that could be a token. */
    static boolean hasForm(String text) {
        return FORM.matcher(text).matches();
    }

    /** What is kept of a token, in hex. */
    static String sha256(String text) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256")
                .digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256.", e);
        }
    }
}
