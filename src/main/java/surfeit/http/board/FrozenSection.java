package surfeit.http.board;

import java.util.List;
import surfeit.lab.StoredInterpretation;

/** The answers of a sample that were frozen. */
final class FrozenSection {
    private FrozenSection() {
    }

    static void write(List<StoredInterpretation> frozen, Markup page) {
        if (frozen.isEmpty()) {
            return;
        }
        page.open("section", "class", "frozen").element("h2", "Frozen answers");
        page.open("div", "class", "wide", "role", "region", "tabindex", "0", "aria-label", "Frozen answers")
            .open("table");
        page.raw("<thead><tr><th scope=\"col\">answer</th><th scope=\"col\">of revision</th><th scope=\"col\">who</th>"
            + "<th scope=\"col\">when</th><th scope=\"col\">since then</th><th scope=\"col\">forms</th></tr></thead>\n")
            .open("tbody");
        for (StoredInterpretation answer : frozen) {
            String address = "/v1/interpretations/" + answer.id();
            page.open("tr").element("th", answer.id() + ", by " + answer.by().word(), "scope", "row")
                .element("td", Long.toString(answer.inputs().sample())).open("td").name(answer.stored().who())
                .close("td")
                .open("td");
            Moment.write(answer.stored().when(), page);
            page.close("td").element("td", answer.stale().isPresent() ? "its inputs changed" : "unchanged").open("td");
            answer.checksums().keySet().forEach(form -> page.link(address + "." + form, form).text(" "));
            page.close("td").close("tr");
        }
        page.close("tbody").close("table").close("div").close("section");
    }
}
