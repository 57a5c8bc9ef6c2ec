package surfeit.http.board;

/** Asks for a sample against another one, in any form the answer comes in. Needs no script. */
final class CompareForm {
    private static final String ADDRESS = "/v1/comparisons.";

    private CompareForm() {
    }

    static void write(String sample, Markup page) {
        page.open("section", "class", "compare").element("h2", "Against another sample");
        page.open("form", "class", "filter", "action", ADDRESS + "svg").raw("\n")
            .open("input", "type", "hidden", "name", "a", "value", sample);
        page.open("label").text("This sample against").open("input", "name", "b", "required", "", "pattern",
            "[A-Za-z0-9._\\-]{1,64}", "title", "the name of a sample on record").close("label");
        page.open("p", "class", "buttons").element("button", "Figure");
        for (String form : new String[] {"md", "csv", "json"}) {
            page.text(" ").element("button", form, "formaction", ADDRESS + form);
        }
        page.close("p").close("form").close("section");
    }
}
