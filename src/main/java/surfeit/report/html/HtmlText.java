package surfeit.report.html;

import surfeit.report.VisibleText;

/** Text in HTML; whatever comes from outside is shown as it is and never acts as markup. */
public final class HtmlText {
    private HtmlText() {
    }

    /** One line of text, for content and for attribute values in double quotes. */
    public static String escaped(String text) {
        return VisibleText.line(text).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
            .replace("\"", "&quot;")
            .replace("'", "&#39;");
    }
}
