package surfeit.http.board;

import java.util.List;
import java.util.Optional;
import surfeit.spot.AccuracyClass;

/** Where a table is opened or dropped, to see its answer before it is stored. Does its work with the script only. */
final class UploadForm {
    private UploadForm() {
    }

    /** @param sample the sample on record that a table goes to; empty where the reader names one */
    static void write(Optional<String> sample, List<String> alloys, Markup page) {
        page.open("section", "class", "upload", "id", "upload", "aria-label", "Open a table", "hidden", "");
        page.open("p").open("label", "class", "button", "for", "table-file").text("Open a table\u2026").close("label")
            .open("input", "type", "file", "id", "table-file", "class", "hidden-file", "accept",
                ".csv,.tsv,.txt,.json,.ndjson").text(" or drop it on this page. "
                + "You see what it would show; nothing is stored until you say so.").close("p");
        page.open("form", "id", "upload-form", "hidden", "").raw("\n").element("p", "", "id", "file-name");
        if (sample.isPresent()) {
            page.open("input", "type", "hidden", "name", "sample", "value", sample.get());
        } else {
            ofNewSample(alloys, page);
        }
        page.open("label").text("Unit, where the table names none or two").open("select", "name", "unit")
            .raw("<option value=\"\">as the table says</option><option>at%</option><option>wt%</option>")
            .close("select")
            .close("label");
        page.raw("<p class=\"buttons\"><button id=\"show\">Show the answer</button> "
            + "<button type=\"button\" id=\"store\" disabled>Store it</button> "
            + "<button type=\"button\" id=\"close\">Close</button></p>\n").close("form");
        page.raw("<p id=\"upload-status\" role=\"status\"></p>\n<div id=\"upload-answer\" tabindex=\"-1\"></div>\n")
            .close("section");
        page.raw("<noscript><p class=\"about\">Without JavaScript these pages are for reading; how to send a table "
            + "says <a href=\"/docs\">the interface</a>.</p></noscript>\n");
    }

    private static void ofNewSample(List<String> alloys, Markup page) {
        page.open("label").text("Sample").open("input", "name", "sample", "required", "", "pattern",
            "[A-Za-z0-9._\\-]{1,64}", "title", "1 to 64 of the characters A-Z a-z 0-9 . _ -").close("label");
        page.open("label").text("Alloy").open("select", "name", "alloy").raw("<option value=\"\">choose, or state a "
            + "nominal</option>");
        alloys.forEach(alloy -> page.element("option", alloy));
        page.close("select").close("label");
        page.open("label").text("or nominal").open("input", "name", "nominal", "placeholder", "Ag:60.1,Cu:39.9")
            .close("label").open("label").text("in").raw("<select name=\"nominal_unit\"><option>at%</option>"
            + "<option>wt%</option></select>").close("label");
        page.open("label").text("Beam energy, keV").open("input", "name", "beam_energy_kev", "inputmode", "decimal",
            "size", "5").close("label");
        page.open("label").text("Concentrations").open("select", "name", "accuracy_class");
        for (AccuracyClass accuracy : AccuracyClass.values()) {
            page.element("option", accuracy.words());
        }
        page.close("select").close("label");
    }
}
