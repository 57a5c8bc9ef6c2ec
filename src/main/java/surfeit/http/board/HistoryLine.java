package surfeit.http.board;

import java.util.List;
import java.util.Optional;
import surfeit.lab.ImportReport;
import surfeit.lab.SampleRevision;
import surfeit.report.Listing;

/**
 * One change of a sample.
 *
 * @param upload the import that was the cause, if one was
 */
public record HistoryLine(SampleRevision revision, Optional<ImportReport> upload) {

    static void write(String sample, List<HistoryLine> lines, long revisions, Markup page) {
        page.open("section", "class", "history").element("h2", "History");
        if (lines.size() < revisions) {
            page.open("p", "class", "about").text("The last " + lines.size() + " of " + revisions + " revisions; ")
                .link("/v1/samples/" + sample + "/revisions", "all of them").text(".").close("p");
        }
        page.open("div", "class", "wide", "role", "region", "tabindex", "0", "aria-label", "History").open("table");
        page.raw("<thead><tr><th scope=\"col\">revision</th><th scope=\"col\">what</th><th scope=\"col\">who</th>"
            + "<th scope=\"col\">when</th><th scope=\"col\" class=\"number\">spots after it</th></tr></thead>\n")
            .open("tbody");
        lines.forEach(line -> line.row(sample, page));
        page.close("tbody").close("table").close("div").close("section");
    }

    private void row(String sample, Markup page) {
        String number = Long.toString(revision.number());
        page.open("tr").open("th", "scope", "row").link("/v1/samples/" + sample + "/revisions/" + number, number)
            .close("th").open("td").text(revision.what().words());
        upload.ifPresent(report -> of(report, page));
        revision.link().filter(link -> upload.isEmpty()).ifPresent(link -> page.text(": ")
            .link("/v1/spots/" + link + "/revisions", link));
        page.close("td").open("td").name(revision.occasion().who()).close("td").open("td");
        Moment.write(revision.occasion().when(), page);
        page.close("td").element("td", Long.toString(revision.spotCount()), "class", "number").close("tr");
    }

    private static void of(ImportReport report, Markup page) {
        String address = "/v1/imports/" + report.id().orElse("");
        page.text(": ");
        report.file().fileName().ifPresent(name -> page.name(name).text(", "));
        page.text(Listing.count(report.acceptedCount(), "spot") + " recorded");
        if (report.unchangedCount() > 0) {
            page.text(", " + report.unchangedCount() + " known already");
        }
        if (report.rejectedCount() > 0) {
            page.text(", ").link(address + "/rejected.csv", report.rejectedCount() + " refused");
        }
        page.text(" (").link(address, "report").text(", ").link(address + "/original", "file as sent").text(")");
    }
}
