package surfeit.report.figure;

import java.util.regex.Pattern;

/**
 * A finished figure. Immutable, thread-safe.
 *
 * @param title       what it shows, in a line
 * @param subtitle    what is said below the title, in a sentence or two
 * @param description the same as its picture in words, for readers who do not see it
 * @param width       in CSS pixels; it may be scaled
 * @param height      in CSS pixels
 * @param headHeight  height of the part at the top that repeats the title in the picture
 * @param elements    the picture, as SVG elements
 */
public record Figure(String title, String subtitle, String description, int width, int height, int headHeight,
                     String elements) {
    /** What turns a figure dark for readers who prefer that on a screen; a page that holds figures carries it once. */
    public static final String STYLE = "@media screen and (prefers-color-scheme:dark){" + Ink.darkRules() + "}";

    private static final String FILE_STYLE = "svg.figure:root{color-scheme:light dark}" + STYLE;

    /** The style of a figure as a source of a content security policy, for whoever serves it as a file. */
    public static final String STYLE_SOURCE = StyleSource.of(FILE_STYLE);

    private static final Pattern ID = Pattern.compile("[A-Za-z][A-Za-z0-9-]*");

    public Figure {
        if (title.isBlank() || description.isBlank()) {
            throw new IllegalArgumentException("A figure has a title and a description, got \"" + title + "\" and \""
                + description + "\".");
        }
        if (!(width > 0 && headHeight >= 0 && height > headHeight)) {
            throw new IllegalArgumentException("A figure is wider than 0 and higher than its head of " + headHeight
                + ", got " + width + " by " + height + ".");
        }
    }

    /** The figure as an SVG file. */
    public String svg() {
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + opened("figure", 0)
            + "<style>" + FILE_STYLE + "</style>\n" + rest();
    }

    /**
     * The figure as part of an HTML page that holds {@link #STYLE} and tells the title itself.
     *
     * @param id begins the ids of its parts; each figure of a page has another
     */
    public String inline(String id) {
        if (!ID.matcher(id).matches()) {
            throw new IllegalArgumentException("Expected as id a letter, then letters, digits and dashes, got \"" + id
                + "\".");
        }
        return opened(id, headHeight) + rest();
    }

    private String opened(String id, int from) {
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"figure\" viewBox=\"0 " + from + " " + width + " "
            + (height - from) + "\" width=\"" + width + "\" height=\"" + (height - from)
            + "\" role=\"img\" aria-labelledby=\"" + id + "-title " + id + "-desc\" font-family=\"sans-serif\">\n"
            + "<title id=\"" + id + "-title\">" + Drawing.escaped(title) + "</title>\n"
            + "<desc id=\"" + id + "-desc\">" + Drawing.escaped(description) + "</desc>\n";
    }

    private String rest() {
        return "<rect width=\"" + width + "\" height=\"" + height + "\"" + Ink.PAPER.fill() + "/>\n" + elements
            + "</svg>\n";
    }
}
