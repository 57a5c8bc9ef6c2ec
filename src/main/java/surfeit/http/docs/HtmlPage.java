package surfeit.http.docs;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** One HTML page in the making: escaped text in a few kinds of block, with its style inside. Not thread-safe. */
public final class HtmlPage {
    private static final String STYLE = style();

    private final String title;
    private final StringBuilder body = new StringBuilder(4096);

    public HtmlPage(String title) {
        this.title = title;
    }

    /** A heading that links can point to; {@code id} may be empty. */
    public HtmlPage heading(int level, String id, String text) {
        return raw("<h" + level + (id.isEmpty() ? "" : " id=\"" + escaped(id) + "\"") + ">" + inline(text) + "</h"
            + level + ">\n");
    }

    /** Text with {@code `code`} and {@code **strong**}; a blank line starts a new paragraph. */
    public HtmlPage paragraph(String text) {
        for (String part : text.strip().split("\n\\s*\n")) {
            if (!part.isBlank()) {
                raw("<p>" + inline(part.strip()) + "</p>\n");
            }
        }
        return this;
    }

    /** Text as it is, in a frame. */
    public HtmlPage example(String caption, String text) {
        return raw("<figure><figcaption>" + inline(caption) + "</figcaption><pre>" + escaped(text.stripTrailing())
            + "</pre></figure>\n");
    }

    /** A table; cells are markup already. */
    public HtmlPage table(List<String> headings, List<List<String>> rows) {
        raw("<table><thead><tr>");
        headings.forEach(heading -> raw("<th>" + escaped(heading) + "</th>"));
        raw("</tr></thead><tbody>\n");
        for (List<String> row : rows) {
            raw("<tr>");
            row.forEach(cell -> raw("<td>" + cell + "</td>"));
            raw("</tr>\n");
        }
        return raw("</tbody></table>\n");
    }

    /** Markup as it is. */
    HtmlPage raw(String markup) {
        body.append(markup);
        return this;
    }

    /** The whole page. */
    public String html() {
        return "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
            + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
            + "<title>" + escaped(title) + " - Surfeit</title>\n<style>" + STYLE + "</style>\n</head>\n<body>\n<main>\n"
            + body + "</main>\n</body>\n</html>\n";
    }

    /** Escaped text in which back quotes make code and double asterisks make it strong. */
    static String inline(String text) {
        StringBuilder out = new StringBuilder();
        String[] parts = text.split("`", -1);
        for (int i = 0; i < parts.length; i++) {
            boolean code = i % 2 == 1 && i < parts.length - 1;
            String piece = escaped(parts[i]);
            out.append(code ? "<code>" + piece + "</code>"
                : piece.replaceAll("\\*\\*([^*]+)\\*\\*", "<strong>$1</strong>"));
        }
        return out.toString();
    }

    /** Text as code. */
    static String code(String text) {
        return "<code>" + escaped(text) + "</code>";
    }

    /** A link to a place of this page. */
    static String link(String anchor, String markup) {
        return "<a href=\"#" + escaped(anchor) + "\">" + markup + "</a>";
    }

    static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\"", "&quot;");
    }

    private static String style() {
        try (InputStream in = HtmlPage.class.getResourceAsStream("/docs/page.css")) {
            if (in == null) {
                throw new IllegalStateException("The program's jar lacks docs/page.css.");
            }
            return "\n" + new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("Cannot read docs/page.css from the program's jar.", e);
        }
    }
}
