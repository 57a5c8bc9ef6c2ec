package surfeit.intake;

/**
 * Keeps a spreadsheet from running a cell as a formula: an apostrophe before a text that starts with = + - @ or a
 * control character, and off again when the table comes back, so that a spot's label survives the round.
 * Source of the characters: OWASP, "CSV Injection", from memory.
 */
final class FormulaGuard {
    private static final String STARTS = "=+-@\t\r";

    private FormulaGuard() {
    }

    /** The text as a word column may hold it. */
    static String guarded(String text) {
        return wouldRun(text, apostrophes(text)) ? "'" + text : text;
    }

    /** The text before it was guarded. */
    static String undone(String text) {
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
        return text.length() > at && STARTS.indexOf(text.charAt(at)) >= 0;
    }
}
