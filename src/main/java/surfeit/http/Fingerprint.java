package surfeit.http;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;

/** Short names for long contents. */
final class Fingerprint {
    /** 72 bits: two contents share a name by chance once in 10^21 pairs. */
    private static final int SHORT_BYTES = 9;
    private static final int PIECE = 16 << 10;

    private Fingerprint() {
    }

    static byte[] sha256(byte[] bytes) {
        return digest().digest(bytes);
    }

    /** SHA-256 in hex over a head and a stream of bytes. */
    static String of(String head, InputStream bytes) throws IOException {
        MessageDigest digest = digest();
        digest.update(head.getBytes(StandardCharsets.UTF_8));
        digest.update((byte) 0);
        byte[] piece = new byte[PIECE];
        for (int count = bytes.read(piece); count >= 0; count = bytes.read(piece)) {
            digest.update(piece, 0, count);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
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
