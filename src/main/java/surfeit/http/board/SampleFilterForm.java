package surfeit.http.board;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import surfeit.segregation.answer.Verdict;

/**
 * What a reader looks for among the samples, as it stands in the form and in the address; empty text lets all through.
 *
 * @param text    part of a name or description
 * @param alloy   name of the catalogue
 * @param verdict word of a verdict
 * @param from    first day of the last change, {@code 2026-11-20}
 * @param to      last day
 */
public record SampleFilterForm(String text, String alloy, String verdict, String from, String to) {
    public static final SampleFilterForm EMPTY = new SampleFilterForm("", "", "", "", "");

    public boolean isEmpty() {
        return equals(EMPTY);
    }

    Map<String, String> parameters() {
        Map<String, String> parameters = new LinkedHashMap<>();
        parameters.put("q", text);
        parameters.put("alloy", alloy);
        parameters.put("verdict", verdict);
        parameters.put("from", from);
        parameters.put("to", to);
        return parameters;
    }

    void write(Look look, List<String> alloys, Markup page) {
        page.open("form", "class", "filter", "action", Look.SAMPLES, "role", "search", "aria-label", "Filter samples")
            .raw("\n");
        page.open("label").text("Name or description").open("input", "type", "search", "name", "q", "value", text)
            .close("label");
        page.open("label").text("Alloy");
        select(page, "alloy", alloy, alloys);
        page.close("label").open("label").text("With something");
        select(page, "verdict", verdict, List.of(Verdict.values()).stream().map(Verdict::word).toList());
        page.close("label");
        page.open("label").text("Changed from").open("input", "type", "date", "name", "from", "value", from)
            .close("label");
        page.open("label").text("to (UTC)").open("input", "type", "date", "name", "to", "value", to).close("label");
        if (look.chosen()) {
            page.open("input", "type", "hidden", "name", "numbers", "value", look.numbers().word());
        }
        page.open("p", "class", "buttons").element("button", "Filter");
        if (!isEmpty()) {
            page.text(" ").link(look.address(Look.SAMPLES), "Show all");
        }
        page.close("p").close("form");
    }

    private static void select(Markup page, String name, String chosen, List<String> options) {
        page.open("select", "name", name).element("option", "any", "value", "");
        for (String option : options) {
            if (option.equals(chosen)) {
                page.element("option", option, "selected", "");
            } else {
                page.element("option", option);
            }
        }
        page.close("select");
    }
}
