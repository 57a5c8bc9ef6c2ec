package surfeit.report;

import java.util.List;
import java.util.Locale;

/** Lists and sentence ends in English. */
public final class Listing {
    private Listing() {
    }

    /** {@code Mn}, {@code Mn and Si}, {@code Mn, Si and Nb}. */
    public static String and(List<String> parts) {
        return joined(parts, " and ");
    }

    /** {@code Mn}, {@code Mn or Si}, {@code Mn, Si or Nb}. */
    public static String or(List<String> parts) {
        return joined(parts, " or ");
    }

    /** {@code 1 spot}, {@code 6 spots}. */
    public static String count(long number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }

    /** The text with exactly one end mark. */
    public static String sentence(String text) {
        String stripped = text.strip();
        return stripped.endsWith(".") || stripped.endsWith("!") || stripped.endsWith("?") ? stripped : stripped + ".";
    }

    /** The text without its final full stop, to be used inside a sentence. */
    public static String clause(String text) {
        String stripped = text.strip();
        return stripped.endsWith(".") ? stripped.substring(0, stripped.length() - 1) : stripped;
    }

    /** The text with its first letter in upper case, as at the start of a sentence. */
    public static String capitalised(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    private static String joined(List<String> parts, String last) {
        int end = parts.size() - 1;
        return end < 1 ? String.join("", parts) : String.join(", ", parts.subList(0, end)) + last + parts.get(end);
    }
}
