package surfeit.lab;

import java.util.Optional;
import java.util.regex.Pattern;
import surfeit.element.Spelling;

/** The rules for the lab's own names. */
public final class Names {
    /** Longest label, session, particle or feature, in characters. Judgement: longer ones are misplaced text. */
    public static final int LENGTH_MAX = 200;

    private static final Pattern SAMPLE = Pattern.compile("[A-Za-z0-9._-]{1,64}");
    private static final Pattern ONLY_DOTS = Pattern.compile("\\.+");

    private Names() {
    }

    /** True for a text that can name a sample. */
    public static boolean isSampleName(String text) {
        return SAMPLE.matcher(text).matches() && !ONLY_DOTS.matcher(text).matches();
    }

    /** @throws ProblemException name-invalid */
    public static void requireSampleName(String what, String text) {
        if (!isSampleName(text)) {
            throw new ProblemException(Problem.NAME_INVALID, what + " is named with 1 to 64 of the characters"
                + " A-Z a-z 0-9 . _ - and not with dots only, got " + Spelling.quoted(text) + ".");
        }
    }

    /** What is wrong with a label, session, particle or feature; empty where nothing is. */
    public static Optional<String> faultOf(String field, String text) {
        if (text.isBlank()) {
            return Optional.of("A " + field + " needs at least one visible character.");
        }
        if (text.length() > LENGTH_MAX) {
            return Optional.of("A " + field + " has at most " + LENGTH_MAX + " characters, got " + text.length() + ".");
        }
        for (int i = 0; i < text.length(); i++) {
            char character = text.charAt(i);
            if (character >= ' ' && character <= '~') {
                continue;
            }
            if (Character.isISOControl(character)) {
                return Optional.of("A " + field + " has no control characters such as line ends or tabs.");
            }
            if (Spelling.isInvisible(text.codePointAt(i))) {
                return Optional.of("A " + field + " has no invisible characters, by which it would differ from one that"
                    + " looks the same; got " + Spelling.numbered(text.codePointAt(i)) + ".");
            }
            if (Character.isSurrogate(character) && !isWhole(text, i)) {
                return Optional.of("A " + field + " is made of whole characters, got half of a surrogate pair.");
            }
        }
        return Optional.empty();
    }

    private static boolean isWhole(String text, int at) {
        return Character.isHighSurrogate(text.charAt(at))
            ? at + 1 < text.length() && Character.isLowSurrogate(text.charAt(at + 1))
            : at > 0 && Character.isHighSurrogate(text.charAt(at - 1));
    }
}
