package surfeit.report.figure;

import java.util.ArrayList;
import java.util.List;
import surfeit.report.VisibleText;

/**
 * About how wide a text is. Whoever shows the figure brings the letters, so this is an estimate from the widths of one
 * of the widest sans serif faces in use (DejaVu Sans, rounded up); others need less room.
 */
final class TextWidth {
    private static final String ELLIPSIS = "\u2026";
    private static final double BOLD = 1.12;
    private static final int FIRST_WIDE = 0x1100;

    private TextWidth() {
    }

    /** Width in the unit of the size. */
    static double of(String text, Type type) {
        double width = 0;
        for (int i = 0; i < text.length(); i++) {
            width += ofCharacter(text.charAt(i));
        }
        return width * type.size() * (type.bold() ? BOLD : 1);
    }

    /** The text, or as much of its beginning as fits, with an ellipsis. */
    static String fitted(String text, Type type, double width) {
        if (of(text, type) <= width) {
            return text;
        }
        int end = text.length();
        while (end > 1 && of(text.substring(0, end) + ELLIPSIS, type) > width) {
            end = text.offsetByCodePoints(end, -1);
        }
        return text.substring(0, end).stripTrailing() + ELLIPSIS;
    }

    /** The text in lines that fit; a longer word stands on a line of its own. */
    static List<String> wrapped(String text, Type type, double width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : VisibleText.line(text).split(" +")) {
            if (!line.isEmpty() && of(line + " " + word, type) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    /** In units of the type size. */
    private static double ofCharacter(char character) {
        if (character >= FIRST_WIDE && Character.isIdeographic(character) || character >= 0xAC00
            && character < 0xE000) {
            return 1;
        }
        return switch (character) {
            case 'i', 'j', 'l', '\'', '|', '.', ',', ':', ';', ' ', 'I', '!' -> 0.34;
            case 'f', 't', 'r', '(', ')', '-', '/', '[', ']', '"', '1' -> character == '1' ? 0.64 : 0.42;
            case 'm', 'w', 'M', 'W', '%', '@', '\u00d7', '\u00b1', '<', '>', '=', '+', '\u2026' -> 0.98;
            default -> Character.isUpperCase(character) ? 0.72 : 0.63;
        };
    }
}
