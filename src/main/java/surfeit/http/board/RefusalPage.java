package surfeit.http.board;

import java.util.List;
import java.util.Map;

/**
 * A refusal for eyes: what happened and what to do.
 *
 * @param requestId by which whoever runs the service finds it
 */
public record RefusalPage(String title, String detail, String whatToDo, String requestId) {

    public String html() {
        Markup page = new Markup();
        page.element("h1", title);
        page.element("p", detail, "class", "refused").element("p", whatToDo);
        page.open("p", "class", "about").text("Request ").name(requestId).text(". ").link(Look.SAMPLES, "Samples")
            .close("p");
        return new PageFrame(title, "plain", new Look(NumberDisplay.POINT, false), Look.SAMPLES, Map.of())
            .html(page.toString(), List.of());
    }
}
