package surfeit.http.board;

import java.util.Set;
import surfeit.report.html.HtmlText;

/** HTML in the making; every text is shown as it is and never acts as markup. Not thread-safe. */
final class Markup {
    /** Elements that end a line of the source. */
    private static final Set<String> LINES = Set.of("p", "tr", "thead", "tbody", "table", "section", "ul", "li", "div",
        "form", "footer", "h1", "h2", "details", "dl", "dd", "label", "select", "nav");

    private final StringBuilder out = new StringBuilder(16 << 10);

    /** Begins an element. @param attributes names and values by turns; an empty value stands for the name alone */
    Markup open(String tag, String... attributes) {
        out.append('<').append(tag);
        for (int i = 0; i < attributes.length; i += 2) {
            out.append(' ').append(attributes[i]);
            if (!attributes[i + 1].isEmpty()) {
                out.append("=\"").append(HtmlText.escaped(attributes[i + 1])).append('"');
            }
        }
        out.append('>');
        return this;
    }

    Markup close(String tag) {
        out.append("</").append(tag).append('>').append(LINES.contains(tag) ? "\n" : "");
        return this;
    }

    /** Text; a blank at either end stays. */
    Markup text(String text) {
        out.append(text.startsWith(" ") ? " " : "").append(HtmlText.escaped(text))
            .append(text.length() > 1 && text.endsWith(" ") ? " " : "");
        return this;
    }

    /** A whole element with text in it. */
    Markup element(String tag, String text, String... attributes) {
        open(tag, attributes).text(text);
        return close(tag);
    }

    /** A word of the lab's own, which keeps its direction and its marks whatever stands around it. */
    Markup name(String word) {
        return element("bdi", word);
    }

    Markup link(String address, String text) {
        return element("a", text, "href", address);
    }

    /** Markup that is ready. */
    Markup raw(String markup) {
        out.append(markup);
        return this;
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
