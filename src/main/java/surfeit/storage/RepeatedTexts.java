package surfeit.storage;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Gives equal texts that are read one after another as one: it takes memory once, and is found equal at a glance. Holds
 * the last text of each of a few hundred places. Not thread-safe.
 */
final class RepeatedTexts {
    /** A power of two. Judgement: some hundred particles and the values of a percent to two digits. */
    private static final int PLACES = 1024;

    private final String[] lastAt = new String[PLACES];

    RepeatedTexts() {
        Arrays.fill(lastAt, "");
    }

    /** The text of these bytes, one a character. */
    String of(byte[] bytes, int from, int length) {
        int hash = 0;
        for (int i = from; i < from + length; i++) {
            hash = 31 * hash + bytes[i];
        }
        int place = (hash ^ hash >>> 10) & PLACES - 1;
        String last = lastAt[place];
        if (isTextOf(last, bytes, from, length)) {
            return last;
        }
        lastAt[place] = new String(bytes, from, length, StandardCharsets.ISO_8859_1);
        return lastAt[place];
    }

    private static boolean isTextOf(String text, byte[] bytes, int from, int length) {
        if (text.length() != length) {
            return false;
        }
        for (int i = 0; i < length; i++) {
            if (text.charAt(i) != (bytes[from + i] & 0xff)) {
                return false;
            }
        }
        return true;
    }
}
