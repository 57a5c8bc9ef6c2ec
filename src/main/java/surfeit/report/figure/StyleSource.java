package surfeit.report.figure;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;

/** Names a style sheet inside a document in a content security policy, so that it and no other is let through. */
public final class StyleSource {
    private StyleSource() {
    }

    /** {@code 'sha256-...'} of the text between the tags (W3C Content Security Policy Level 3, hash-source). */
    public static String of(String style) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(style.getBytes(StandardCharsets.UTF_8));
            return "'sha256-" + Base64.getEncoder().encodeToString(hash) + "'";
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform knows SHA-256; this one does not.", e);
        }
    }
}
