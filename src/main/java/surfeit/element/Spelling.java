package surfeit.element;

import java.text.Normalizer;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Which known words a mistyped text most likely meant: a suggestion for a refusal, never a correction.
 *
 * <p>Words are compared without case by the number of letters put in, left out, changed or swapped with their
 * neighbour (optimal string alignment distance); up to a third of the letters may differ.
 */
public final class Spelling {
    /** Longer texts get no suggestion, which bounds the work a stranger can cause. Judgement. */
    private static final int LONGEST_TEXT = 64;
    private static final int LONGEST_QUOTE = 40;
    /** Texts of characters below this one are in NFC (Unicode Standard Annex 15, section 9). */
    private static final int FIRST_COMBINING = 0x300;

    private Spelling() {
    }

    /** The nearest known words, nearest first, in the order given where equally near. */
    public static List<String> nearest(String text, Collection<String> known, int atMost) {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        if (wanted.isEmpty() || wanted.length() > LONGEST_TEXT) {
            return List.of();
        }
        int allowed = Math.max(1, wanted.length() / 3);
        return known.stream()
            .map(word -> Map.entry(word, distance(wanted, word.toLowerCase(Locale.ROOT))))
            .filter(entry -> entry.getValue() <= allowed)
            .sorted(Comparator.comparingInt(Map.Entry::getValue))
            .limit(atMost)
            .map(Map.Entry::getKey)
            .toList();
    }

    /** A text from outside as a message shows it: in quotes, control characters as blanks, cut when long. */
    public static String quoted(String text) {
        String printable = text.replaceAll("\\p{Cntrl}", " ");
        return printable.length() <= LONGEST_QUOTE
            ? '"' + printable + '"' : '"' + printable.substring(0, LONGEST_QUOTE) + "…\"";
    }

    /**
     * A name in the one form that names are kept in, Unicode's NFC: an umlaut may be sent as one character or as two, and
     * must not make two names. Source: Unicode Standard Annex 15.
     */
    public static String composed(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) >= FIRST_COMBINING) {
                return Normalizer.normalize(text, Normalizer.Form.NFC);
            }
        }
        return text;
    }

    /** A name with its accents as characters of their own, Unicode's NFD, as some file systems write it. */
    public static String decomposed(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFD);
    }

    /** True for a character that shows nothing, so that two texts that differ by it look alike (Unicode Cf, Zl, Zp). */
    public static boolean isInvisible(int codePoint) {
        int kind = Character.getType(codePoint);
        return kind == Character.FORMAT || kind == Character.LINE_SEPARATOR || kind == Character.PARAGRAPH_SEPARATOR;
    }

    /** A character by its number, as a message shows it: {@code U+200B}. */
    public static String numbered(int codePoint) {
        return String.format(Locale.ROOT, "U+%04X", codePoint);
    }

    private static int distance(String a, String b) {
        int[][] cost = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    cost[i][j] = i + j;
                    continue;
                }
                int changed = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                int best = Math.min(cost[i - 1][j - 1] + changed, Math.min(cost[i - 1][j], cost[i][j - 1]) + 1);
                boolean swapped = i > 1 && j > 1
                    && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
                cost[i][j] = swapped ? Math.min(best, cost[i - 2][j - 2] + 1) : best;
            }
        }
        return cost[a.length()][b.length()];
    }
}
