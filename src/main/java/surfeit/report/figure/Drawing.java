package surfeit.report.figure;

import surfeit.report.VisibleText;

/**
 * SVG elements one after another; x to the right and y down, in CSS pixels where the figure is not scaled.
 *
 * <p>Every text is shown as it is and never acts as markup. Not thread-safe.
 */
final class Drawing {
    private static final int USUAL_LENGTH = 16 << 10;
    private static final int CENTS = 100;

    private final StringBuilder out = new StringBuilder(USUAL_LENGTH);

    /** How a line is drawn; {@code dashes} is empty for a solid one. */
    record Stroke(Ink ink, double width, String dashes) {
        static Stroke of(Ink ink, double width) {
            return new Stroke(ink, width, "");
        }

        Stroke dashed(String pattern) {
            return new Stroke(ink, width, pattern);
        }
    }

    Drawing line(double x1, double y1, double x2, double y2, Stroke stroke) {
        out.append("<line");
        number("x1", x1);
        number("y1", y1);
        number("x2", x2);
        number("y2", y2);
        stroke(stroke);
        return end();
    }

    /** A line from the left to the right at one height. */
    Drawing horizontal(double x1, double x2, double y, Stroke stroke) {
        return line(x1, y, x2, y, stroke);
    }

    Drawing vertical(double x, double y1, double y2, Stroke stroke) {
        return line(x, y1, x, y2, stroke);
    }

    Drawing rectangle(double x, double y, double width, double height, Ink ink) {
        out.append("<rect");
        number("x", x);
        number("y", y);
        number("width", width);
        number("height", height);
        out.append(ink.fill());
        return end();
    }

    /** A line through points given as x, y, x, y ... */
    Drawing polyline(double[] points, Stroke stroke) {
        out.append("<polyline fill=\"none\"");
        points(points);
        stroke(stroke);
        return end();
    }

    /** A closed area, filled, with an outline: thin in the ink of the paper, so that signs stay apart. */
    Drawing polygon(Ink fill, Ink outline, double... points) {
        out.append("<polygon");
        points(points);
        return filled(fill, outline);
    }

    Drawing circle(double x, double y, double radius, Ink fill, Ink outline) {
        out.append("<circle");
        number("cx", x);
        number("cy", y);
        number("r", radius);
        return filled(fill, outline);
    }

    private Drawing filled(Ink fill, Ink outline) {
        out.append(fill.fillWithOutline(outline));
        number("stroke-width", outline == Ink.PAPER ? 0.7 : outline == fill ? 0.2 : 1.4);
        return end();
    }

    Drawing text(double x, double y, String text, Type type) {
        return text(x, y, text, type, "", "");
    }

    /** A text that may take this much room; where it is cut, the whole of it shows on pointing. */
    Drawing fitted(double x, double y, String text, Type type, double width) {
        String line = VisibleText.line(text);
        String shown = TextWidth.fitted(line, type, width);
        return text(x, y, shown, type, shown.equals(line) ? "" : line, "");
    }

    /** A text turned about its position by degrees, clockwise. */
    Drawing turned(double x, double y, String text, Type type, double degrees) {
        StringBuilder turn = new StringBuilder(" transform=\"rotate(");
        append(degrees, turn);
        append(x, turn.append(' '));
        append(y, turn.append(' '));
        return text(x, y, text, type, "", turn.append(")\"").toString());
    }

    private Drawing text(double x, double y, String text, Type type, String whole, String more) {
        out.append("<text");
        number("x", x);
        number("y", y);
        number("font-size", type.size());
        out.append(type.bold() ? " font-weight=\"600\"" : "");
        if (type.anchor() != Type.Anchor.START) {
            out.append(" text-anchor=\"").append(type.anchor().word()).append('"');
        }
        out.append(type.ink().fill()).append(more).append('>');
        if (!whole.isEmpty()) {
            title(whole);
        }
        out.append(escaped(text)).append("</text>\n");
        return this;
    }

    /** What follows, to the matching {@link #close}, shows this text on pointing. */
    Drawing open(String title) {
        out.append("<g>");
        title(title);
        return this;
    }

    Drawing close() {
        out.append("</g>\n");
        return this;
    }

    /** Everything drawn so far. */
    String elements() {
        return out.toString();
    }

    private void title(String text) {
        out.append("<title>").append(escaped(text)).append("</title>");
    }

    private Drawing end() {
        out.append("/>\n");
        return this;
    }

    private void stroke(Stroke stroke) {
        out.append(stroke.ink().stroke());
        number("stroke-width", stroke.width());
        if (!stroke.dashes().isEmpty()) {
            out.append(" stroke-dasharray=\"").append(stroke.dashes()).append('"');
        }
    }

    private void points(double[] points) {
        out.append(" points=\"");
        for (int i = 0; i < points.length; i++) {
            append(points[i], out.append(i == 0 ? "" : i % 2 == 0 ? " " : ","));
        }
        out.append('"');
    }

    private void number(String attribute, double value) {
        append(value, out.append(' ').append(attribute).append("=\""));
        out.append('"');
    }

    /** A coordinate to a hundredth, without trailing zeros. */
    private static void append(double value, StringBuilder out) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("A coordinate of a figure is a finite number, got " + value + ".");
        }
        long cents = Math.round(value * CENTS);
        out.append(cents < 0 ? "-" : "").append(Math.abs(cents) / CENTS);
        long rest = Math.abs(cents) % CENTS;
        if (rest > 0) {
            out.append('.').append(rest / 10);
            if (rest % 10 > 0) {
                out.append(rest % 10);
            }
        }
    }

    /** Text as XML and HTML show it literally, on one line. */
    static String escaped(String text) {
        String line = VisibleText.line(text);
        StringBuilder escaped = new StringBuilder(line.length() + 8);
        for (int i = 0; i < line.length(); i++) {
            char character = line.charAt(i);
            switch (character) {
                case '&' -> escaped.append("&amp;");
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '"' -> escaped.append("&quot;");
                default -> escaped.append(character);
            }
        }
        return escaped.toString();
    }
}
