package surfeit.spot;

/**
 * Keeps a spreadsheet from running the lab's own words as a formula: an apostrophe before a text that starts with
 * {@code = + - @} in usual or full width, blanks before it or not, or with a tab, a line end or a null character; and
 * off again when the table comes back, so that a spot's label survives the round.
 *
 * <p>Source of the characters: OWASP Application Security Verification Standard 5, requirement 1.2.10; line ends and
 * full-width forms after OWASP, "CSV Injection", from memory.
 */
public final class FormulaGuard {
    private static final String SIGNS = "=+-@\uFF1D\uFF0B\uFF0D\uFF20";
    private static final String CONTROLS = "\t\r\n\u0000";

    private FormulaGuard() {
    }

    /** The text as a column of words may hold it. */
    public static String guarded(String text) {
        return wouldRun(text, apostrophes(text)) ? "'" + text : text;
    }

    /** The text before it was guarded. */
    public static String undone(String text) {
        int apostrophes = apostrophes(text);
        return apostrophes > 0 && wouldRun(text, apostrophes) ? text.substring(1) : text;
    }

    private static int apostrophes(String text) {
        int count = 0;
        while (count < text.length() && text.charAt(count) == '\'') {
            count++;
        }
        return count;
    }

    private static boolean wouldRun(String text, int at) {
        if (at == text.length()) {
            return false;
        }
        int first = at;
        while (first < text.length() && isBlank(text.charAt(first))) {
            first++;
        }
        return CONTROLS.indexOf(text.charAt(at)) >= 0 || first < text.length() && SIGNS.indexOf(text.charAt(first)) >= 0;
    }

    private static boolean isBlank(char c) {
        return c <= ' ' || Character.isSpaceChar(c) || c == '\uFEFF';
    }
}
