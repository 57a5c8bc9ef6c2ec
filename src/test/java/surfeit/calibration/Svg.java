package surfeit.calibration;

import java.util.Locale;

/** A drawing as SVG text: lines, marks and words in greys, no script. Lengths in pixels. Not thread-safe. */
final class Svg {
    static final String INK = "#222222";
    static final String MID = "#767676";
    static final String PALE = "#e4e4e4";
    private static final double MARK = 3;

    private final StringBuilder shapes = new StringBuilder();

    private void add(String format, Object... values) {
        shapes.append(String.format(Locale.ROOT, format, values)).append('\n');
    }

    void line(double x1, double y1, double x2, double y2, String colour, double width) {
        add("<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"%s\" stroke-width=\"%.1f\"/>",
            x1, y1, x2, y2, colour, width);
    }

    void band(double x, double y, double width, double height, String colour) {
        add("<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"%s\"/>", x, y, width, height, colour);
    }

    /** @param anchor start, middle or end */
    void words(double x, double y, String text, double size, String anchor, boolean bold) {
        add("<text x=\"%.1f\" y=\"%.1f\" font-size=\"%.1f\" text-anchor=\"%s\"%s>%s</text>", x, y, size, anchor,
            bold ? " font-weight=\"bold\"" : "", escaped(text));
    }

    void disc(double x, double y, boolean filled) {
        add("<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\" fill=\"%s\" stroke=\"%s\"/>", x, y, MARK,
            filled ? INK : "white", INK);
    }

    void diamond(double x, double y, boolean filled) {
        double r = MARK + 1;
        add("<path d=\"M%.1f %.1fL%.1f %.1fL%.1f %.1fL%.1f %.1fZ\" fill=\"%s\" stroke=\"%s\"/>",
            x, y - r, x + r, y, x, y + r, x - r, y, filled ? INK : "white", INK);
    }

    /** A cross: the value misses its target. */
    void cross(double x, double y) {
        double r = MARK + 1;
        line(x - r, y - r, x + r, y + r, INK, 2);
        line(x - r, y + r, x + r, y - r, INK, 2);
    }

    /** A triangle at the edge of an axis: the value lies beyond it. */
    void beyond(double x, double y, boolean right) {
        double d = right ? MARK + 2 : -MARK - 2;
        add("<path d=\"M%.1f %.1fL%.1f %.1fL%.1f %.1fZ\" fill=\"%s\"/>", x - d, y - MARK, x, y, x - d, y + MARK, INK);
    }

    String document(double width, double height, String title, String description) {
        return String.format(Locale.ROOT, """
            <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %.0f %.0f" width="%.0f" height="%.0f" role="img" \
            aria-labelledby="title description" font-family="sans-serif" fill="%s">
            <title id="title">%s</title>
            <desc id="description">%s</desc>
            <rect width="100%%" height="100%%" fill="white"/>
            """, width, height, width, height, INK, escaped(title), escaped(description)) + shapes + "</svg>\n";
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\"", "&quot;");
    }
}
