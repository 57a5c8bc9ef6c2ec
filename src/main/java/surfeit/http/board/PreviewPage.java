package surfeit.http.board;

import java.util.List;
import java.util.Map;
import surfeit.lab.Dialect;
import surfeit.lab.ImportReport;
import surfeit.lab.LeftOut;
import surfeit.lab.Place;
import surfeit.report.Listing;

/**
 * What a table would do to a sample were it stored: how it was read, and the answer after it.
 *
 * @param isNew    true where the sample is not on record yet
 * @param answer   sections of the report, as HTML
 * @param names    words of the lab that stand in the sentences of the report
 */
public record PreviewPage(Look look, String sample, boolean isNew, ImportReport report, String answer,
                          List<String> names) {

    public String html() {
        Markup page = new Markup();
        page.open("section", "class", "preview", "data-new", Boolean.toString(isNew), "data-accepted",
            Long.toString(report.acceptedCount())).raw("\n");
        page.open("h1").text("Not stored yet: ").name(sample).close("h1");
        page.open("p").text(said()).close("p");
        report.dialect().ifPresent(dialect -> read(dialect, page));
        leftOut(page);
        page.close("section").raw(answer);
        return new PageFrame("Not stored yet: " + sample, "plain", look, Look.SAMPLES, Map.of())
            .html(page.toString(), names);
    }

    private String said() {
        String what = Listing.count(report.acceptedCount(), "spot") + " would be recorded"
            + (report.unchangedCount() > 0 ? ", " + report.unchangedCount() + " are on record already" : "") + ". ";
        return what + (isNew ? "The sample would be made."
            : "The sample is on record: its own description is used, and its "
            + "spots are part of the answer below.");
    }

    private static void read(Dialect dialect, Markup page) {
        page.open("p", "class", "about").text("Read as " + dialect.charset());
        dialect.delimiter().ifPresent(mark -> page.text(", columns parted by " + mark(mark)));
        dialect.layout().filter("turned"::equals).ifPresent(turned -> page.text(", one spot a column"));
        dialect.layout().filter("merged"::equals)
            .ifPresent(merged -> page.text(", rows without a label taken with the spot above"));
        dialect.decimal().ifPresent(mark -> page.text(", decimal " + mark(mark)));
        dialect.unit().ifPresent(unit -> page.text(", unit ").name(unit));
        dialect.timeZone().ifPresent(zone -> page.text(", times in ").name(zone));
        page.text(" (" + dialect.decidedBy() + ").").close("p");
    }

    private static String mark(String mark) {
        return switch (mark) {
            case ";" -> "semicolon";
            case "," -> "comma";
            case "." -> "point";
            case "\t", "tab" -> "tab";
            default -> mark;
        };
    }

    private void leftOut(Markup page) {
        if (report.leftOut().isEmpty()) {
            return;
        }
        page.element("p", "Left out:", "class", "about").open("ul");
        for (LeftOut left : report.leftOut()) {
            page.open("li").text(place(left.place()) + left.reason());
            left.label().ifPresent(label -> page.text(": ").name(label));
            page.close("li");
        }
        page.close("ul");
    }

    private static String place(Place place) {
        StringBuilder words = new StringBuilder();
        place.line().ifPresent(line -> words.append("line ").append(line).append(", "));
        place.column().ifPresent(column -> words.append("column ").append(column).append(", "));
        place.columnName().ifPresent(name -> words.append('"').append(name).append("\", "));
        return words.toString();
    }
}
