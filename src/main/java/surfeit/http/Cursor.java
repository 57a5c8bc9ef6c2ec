package surfeit.http;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.PublicId;

/** Where a list goes on, as an opaque text that fits only the list and the filters it came from. */
final class Cursor {
    private static final int FINGERPRINT_BYTES = 6;

    private Cursor() {
    }

    /** @param list the list and its filters, in a fixed order */
    static String of(List<String> list, String key) {
        byte[] fingerprint = fingerprint(list);
        byte[] after = key.getBytes(StandardCharsets.UTF_8);
        byte[] bytes = Arrays.copyOf(fingerprint, fingerprint.length + after.length);
        System.arraycopy(after, 0, bytes, fingerprint.length, after.length);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    /** The key to go on after. @throws ProblemException cursor-mismatch */
    static String key(List<String> list, String cursor) {
        byte[] bytes;
        try {
            bytes = Base64.getUrlDecoder().decode(cursor);
        } catch (IllegalArgumentException e) {
            throw mismatch();
        }
        if (bytes.length <= FINGERPRINT_BYTES
            || !Arrays.equals(fingerprint(list), Arrays.copyOf(bytes, FINGERPRINT_BYTES))) {
            throw mismatch();
        }
        return new String(bytes, FINGERPRINT_BYTES, bytes.length - FINGERPRINT_BYTES, StandardCharsets.UTF_8);
    }

    /** The record number in a key that is a spot's id. @throws ProblemException cursor-mismatch */
    static long spotNumber(String key) {
        return PublicId.number(PublicId.SPOT, key).orElseThrow(Cursor::mismatch);
    }

    /** Refuses a cursor that no list of this service gave. */
    static ProblemException mismatch() {
        return new ProblemException(Problem.CURSOR_MISMATCH,
            "Expected a cursor that this list gave with the same filters and sort; this one is not.");
    }

    private static byte[] fingerprint(List<String> list) {
        return Arrays.copyOf(Fingerprint.sha256(String.join("\u0000", list)), FINGERPRINT_BYTES);
    }
}
