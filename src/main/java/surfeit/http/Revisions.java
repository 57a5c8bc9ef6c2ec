package surfeit.http;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import surfeit.lab.Expectation;

/**
 * Revisions as strong ETags: {@code "7-0.k3Jd9xQ2p1aZ"}, the revisions an answer is made from and, after the point,
 * what else decides its bytes (program, settings, form).
 *
 * <p>An ETag is known before the answer is made; its first number is the revision {@code If-Match} speaks of.
 */
final class Revisions {
    private Revisions() {
    }

    /** @param revisions what is stored, in a fixed order; {@code salt} the rest */
    static String tag(String salt, long... revisions) {
        StringBuilder tag = new StringBuilder("\"");
        for (int i = 0; i < revisions.length; i++) {
            tag.append(i == 0 ? "" : "-").append(revisions[i]);
        }
        return tag.append('.').append(salt).append('"').toString();
    }

    /** True where {@code If-None-Match} names the tag; {@code W/} does not matter there (RFC 9110, section 13.1.2). */
    static boolean namesTag(String ifNoneMatch, String tag) {
        if (ifNoneMatch == null) {
            return false;
        }
        return ifNoneMatch.equals(tag)
            || entries(ifNoneMatch).stream()
                .anyMatch(entry -> entry.equals("*") || entry.equals(tag) || entry.equals("W/" + tag));
    }

    /** What {@code If-Match} and {@code If-None-Match: *} say of the revision a change starts from. */
    static Expectation expectation(String ifMatch, String ifNoneMatch) {
        if (ifMatch == null) {
            return ifNoneMatch != null && ifNoneMatch.strip().equals("*") ? Expectation.NEW : Expectation.NONE;
        }
        List<String> entries = entries(ifMatch);
        if (entries.contains("*")) {
            return Expectation.EXISTING;
        }
        return Expectation.revision(entries.stream().mapToLong(Revisions::first).filter(n -> n >= 0).toArray());
    }

    /** The revision a strong tag starts with, or -1; a weak tag never matches (RFC 9110, section 13.1.1). */
    private static long first(String entry) {
        if (entry.length() < 3 || entry.charAt(0) != '"') {
            return -1;
        }
        int end = 1;
        while (end < entry.length() && Character.digit(entry.charAt(end), 10) >= 0) {
            end++;
        }
        return end == 1 || end > 18 ? -1 : Long.parseLong(entry.substring(1, end));
    }

    private static List<String> entries(String field) {
        return new ArrayList<>(Arrays.stream(field.split(",")).map(String::strip).filter(text -> !text.isEmpty())
            .toList());
    }
}
