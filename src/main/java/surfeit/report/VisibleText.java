package surfeit.report;

import java.util.ArrayList;
import java.util.List;

/**
 * Text from outside as one visible line.
 *
 * <p>Group and particle names, phrases and sources come from uploads. Control characters could move a terminal's
 * cursor, line ends could forge lines, and invisible format characters could turn the reading direction round; none
 * is let through to a report.
 */
public final class VisibleText {
    private VisibleText() {
    }

    /** The text with control characters and line ends as blanks and invisible format characters left out. */
    public static String line(String text) {
        StringBuilder line = new StringBuilder(text.length());
        text.codePoints().forEach(codePoint -> {
            switch (Character.getType(codePoint)) {
                case Character.CONTROL, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR -> line.append(' ');
                case Character.FORMAT, Character.SURROGATE, Character.UNASSIGNED, Character.PRIVATE_USE -> { }
                default -> line.appendCodePoint(codePoint);
            }
        });
        return line.toString().strip();
    }

    /** The text in lines of at most the width, broken at blanks; a longer word stands on a line of its own. */
    static List<String> wrapped(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : line(text).split(" +")) {
            if (!line.isEmpty() && length(line) + 1 + length(word) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    /** Characters as a reader counts them; wide East Asian ones count one. */
    static int length(CharSequence text) {
        return Character.codePointCount(text, 0, text.length());
    }
}
