package surfeit.http;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import surfeit.report.figure.Figure;
import surfeit.report.html.HtmlPage;

/**
 * The content security policy of a page without script: nothing from elsewhere, and only the style that stands in it.
 */
final class PagePolicy {
    private static final String NOTHING_ELSE = "; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
    /** Of a report: its own style, and nothing from anywhere. */
    static final String REPORT = "default-src 'none'; style-src " + HtmlPage.STYLE_SOURCE + NOTHING_ELSE;
    /** Of a figure: its own style, and nothing from anywhere. */
    static final String FIGURE = "default-src 'none'; style-src " + Figure.STYLE_SOURCE + NOTHING_ELSE;

    /** Of the board: style, script and pictures from this service, and nothing from elsewhere. */
    static final String BOARD = "default-src 'self'; object-src 'none'; base-uri 'none'; form-action 'self'; "
        + "frame-ancestors 'none'";

    private static final String START = "<style>";
    private static final String END = "</style>";

    private PagePolicy() {
    }

    static String of(String page) {
        int start = page.indexOf(START) + START.length();
        int end = page.indexOf(END);
        String style = page.substring(start, end);
        String hash = Base64.getEncoder().encodeToString(Fingerprint.sha256(style.getBytes(StandardCharsets.UTF_8)));
        return "default-src 'self'; style-src 'sha256-" + hash
            + "'; script-src 'none'; object-src 'none'; base-uri 'none'; "
            + "frame-ancestors 'none'";
    }
}
