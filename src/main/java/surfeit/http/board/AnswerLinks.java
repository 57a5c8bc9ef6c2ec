package surfeit.http.board;

import java.util.List;
import surfeit.segregation.answer.GroupBy;

/** Every form of every answer about a sample, as links. */
final class AnswerLinks {
    private AnswerLinks() {
    }

    /** @param figures the figures there are to draw, by their words */
    static void write(String sample, List<String> figures, Markup page) {
        String base = "/v1/samples/" + sample;
        page.open("section", "class", "forms").element("h2", "Take it along").open("dl");
        for (GroupBy by : GroupBy.values()) {
            page.element("dt", "Answer by " + by.word()).open("dd");
            String query = by == GroupBy.FEATURE ? "" : "?by=" + by.word();
            for (String form : new String[] {"html", "md", "csv", "json"}) {
                page.link(base + "/segregation." + form + query, form).text(" ");
            }
            page.link(base + "/segregation.svg" + query, "svg").close("dd");
        }
        page.element("dt", "Figures").open("dd");
        figures.forEach(figure -> page.link(base + "/segregation.svg?figure=" + figure, figure).text(" "));
        page.close("dd").element("dt", "Spots").open("dd");
        forms(page, base + "/spots", "", "csv", "json", "ndjson");
        page.text("with withdrawn ones: ");
        forms(page, base + "/spots", "?withdrawn=true", "csv", "json", "ndjson");
        page.close("dd").element("dt", "Rows for statistics programs").open("dd");
        forms(page, "/v1/results", "?sample=" + sample, "csv", "json", "ndjson");
        page.close("dd").element("dt", "Frozen answers").open("dd").link(base + "/interpretations", "list");
        page.close("dd").element("dt", "The sample itself").open("dd").link(base, "as it is").text(" ")
            .link(base + "/revisions", "revisions").close("dd");
        page.close("dl").close("section");
    }

    private static void forms(Markup page, String address, String query, String... forms) {
        for (String form : forms) {
            page.link(address + "." + form + query, form).text(" ");
        }
    }
}
