package surfeit.http.board;

import java.util.List;
import java.util.Map;

/** What stands at the front door where nobody has shown a token yet. It tells nothing of the lab's work. */
public record GreetingPage(Look look) {

    public String html() {
        Markup page = new Markup();
        page.element("h1", "Surfeit");
        page.element("p", "Says where an alloy's surface is enriched or depleted, from EDS spot results.");
        page.element("p", "This service shows the lab's samples to those who have a token. The browser asks for a name "
            + "and a password: any name will do, the password is the token (lab_\u2026).");
        page.open("p").element("a", "Show the samples", "class", "button", "href", look.address(Look.SAMPLES))
            .close("p");
        return new PageFrame("Welcome", "plain", look, "/", Map.of()).html(page.toString(), List.of());
    }
}
