package surfeit.report;

/**
 * Text for a CSV cell that no spreadsheet takes for a formula.
 *
 * <p>A cell that starts with {@code = + - @}, a tab, a carriage return or a null character, blanks before it or not,
 * gets an apostrophe in front (rule of the OWASP Application Security Verification Standard on CSV and formula
 * injection). Numbers are written by the program itself and stay numbers.
 */
final class CsvText {
    private static final String FORMULA_STARTS = "=+-@\t\r\u0000";

    private CsvText() {
    }

    static String defused(String text) {
        boolean plainStart = text.isEmpty() || FORMULA_STARTS.indexOf(text.charAt(0)) < 0;
        String stripped = text.strip();
        boolean strippedStart = stripped.isEmpty() || FORMULA_STARTS.indexOf(stripped.charAt(0)) < 0;
        return plainStart && strippedStart ? text : "'" + text;
    }
}
