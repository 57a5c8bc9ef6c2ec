package surfeit.intake;

/** Blanks around the text of a cell; non-breaking ones, which spreadsheets leave, are blanks too. */
final class CellText {
    private CellText() {
    }

    static String strip(String text) {
        int end = text.length();
        if (end == 0 || !isBlank(text.charAt(0)) && !isBlank(text.charAt(end - 1))) {
            return text;
        }
        int start = 0;
        while (start < end && isBlank(text.charAt(start))) {
            start++;
        }
        while (end > start && isBlank(text.charAt(end - 1))) {
            end--;
        }
        return text.substring(start, end);
    }

    static boolean isBlank(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (!isBlank(text.charAt(i))) {
                return false;
            }
        }
        return true;
    }

    static boolean isBlank(char c) {
        return c == ' ' || c >= '\t' && c <= '\r' || c >= '\u0080' && (Character.isSpaceChar(c) || c == '\uFEFF');
    }
}
