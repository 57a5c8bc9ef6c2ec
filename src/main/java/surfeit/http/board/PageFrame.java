package surfeit.http.board;

import java.util.Collection;
import java.util.Map;

/**
 * What stands around every page of the board: head, way around, and the foot.
 *
 * @param title      of the window
 * @param kind       what the script finds on it: {@code samples}, {@code sample}, {@code plain}
 * @param look       how numbers look
 * @param path       its own address
 * @param parameters with these
 */
record PageFrame(String title, String kind, Look look, String path, Map<String, String> parameters) {

    /** The whole page. @param names words of the lab that stand in sentences of the body */
    String html(String body, Collection<String> names) {
        Markup page = new Markup();
        page.raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
            + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
            + "<meta name=\"color-scheme\" content=\"light dark\">\n").element("title", title + " \u00b7 Surfeit")
            .raw("\n"
            + "<link rel=\"icon\" href=\"/board/icon.svg\" type=\"image/svg+xml\">\n"
            + "<link rel=\"stylesheet\" href=\"/board/board.css\">\n"
            + "<script src=\"/board/board.js\" defer></script>\n</head>\n");
        page.open("body", "data-page", kind).raw("\n<a class=\"skip\" href=\"#content\">Skip to the content</a>\n");
        page.raw("<header class=\"top\">\n").element("a", "Surfeit", "class", "mark", "href",
            look.address(Look.SAMPLES))
            .raw("\n<nav aria-label=\"Pages\">").link(look.address(Look.SAMPLES), "Samples").raw(" ")
            .link("/docs", "Interface").raw("</nav>\n<p id=\"live\" role=\"status\"></p>\n</header>\n");
        page.raw("<main id=\"content\" tabindex=\"-1\">\n").raw(body).raw("</main>\n");
        foot(page);
        return look.numbers().shown(page.raw("</body>\n</html>\n").toString(), names);
    }

    private void foot(Markup page) {
        page.raw("<footer>\n<p>Numbers with a decimal ").text(look.numbers().word() + ", ").name(look.numbers()
            .example())
            .text("; ").open("a", "href", look.other().address(path, parameters))
            .text("with a " + look.other().numbers().word() + ", ").name(look.other().numbers().example()).close("a")
            .raw("</p>\n");
        page.element("p", "Cautions on these pages remind; your site's rules and the safety data sheets decide.");
        page.raw("</footer>\n");
    }
}
