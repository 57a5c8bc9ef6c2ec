package surfeit.http.board;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.lab.StoredSample;
import surfeit.report.Highlight;
import surfeit.report.Highlights;
import surfeit.report.Listing;
import surfeit.report.MeasuredWords;
import surfeit.report.figure.FactorStrip;
import surfeit.report.figure.VerdictSign;
import surfeit.segregation.answer.Verdict;

/**
 * The list of samples with their strongest findings, the last changed first.
 *
 * @param alloys   names of the catalogue
 * @param isFirst  true for the first page
 * @param next     cursor of the next page
 * @param examined samples looked at for this page
 * @param state    tells this page from the one after a change
 */
public record SamplesPage(Look look, SampleFilterForm filter, List<String> alloys, List<SampleLine> lines,
                          boolean isFirst, Optional<String> next, int examined, String state) {

    public String html() {
        Markup page = new Markup();
        page.element("h1", "Samples");
        UploadForm.write(Optional.empty(), alloys, page);
        filter.write(look, alloys, page);
        page.open("div", "id", "fresh", "data-state", state).raw("\n");
        if (lines.isEmpty()) {
            page.element("p", nothing(), "class", "nothing");
        } else {
            table(page);
        }
        turn(page);
        page.close("div");
        return new PageFrame("Samples", "samples", look, Look.SAMPLES, filter.parameters())
            .html(page.toString(), List.of());
    }

    private String nothing() {
        if (next.isPresent()) {
            return "Among the " + examined + " samples looked at, none fits. There are more.";
        }
        return filter.isEmpty() && isFirst ? "There is no sample yet. Open a table, or send one as /docs says."
            : "No sample fits.";
    }

    private void table(Markup page) {
        page.raw("<table class=\"samples\">\n<caption>The last changed first. Factor: found over nominal atomic "
            + "fraction, line its 95 % interval, grey the margin.</caption>\n<thead><tr><th scope=\"col\">sample</th>"
            + "<th scope=\"col\">strongest findings</th><th scope=\"col\" class=\"strip\"><span>factor</span>"
            + FactorStrip.head() + "</th><th scope=\"col\">how sure</th><th scope=\"col\">measured</th>"
            + "<th scope=\"col\">changed</th></tr></thead>\n");
        lines.forEach(line -> body(line, page));
        page.close("table");
    }

    private void body(SampleLine line, Markup page) {
        StoredSample sample = line.sample();
        List<Highlight> found = line.found().map(Highlights::lines).orElse(List.of());
        String rows = Integer.toString(Math.max(1, found.size()));
        page.open("tbody", "id", "s-" + sample.name(), "data-state", sample.revision() + "-" + line.alloyRevision())
            .raw("\n");
        for (int i = 0; i < Math.max(1, found.size()); i++) {
            page.open("tr");
            if (i == 0) {
                page.open("th", "scope", "rowgroup", "rowspan", rows).open("a", "href",
                    look.address("/samples/" + sample.name())).name(sample.name()).close("a");
                about(sample, page);
                page.close("th");
            }
            if (found.isEmpty()) {
                page.element("td", instead(line), "class", "instead", "colspan", "3");
            } else {
                finding(found.get(i), page);
            }
            if (i == 0) {
                page.open("td", "rowspan", rows, "class", "measured");
                measured(line, page);
                page.close("td").open("td", "rowspan", rows, "class", "when");
                Moment.write(sample.changed(), page);
                page.close("td");
            }
            page.close("tr");
        }
        page.close("tbody");
    }

    private static void about(StoredSample sample, Markup page) {
        String nominal = sample.sample().nominal().map(own -> MeasuredWords.nominal(own.resolve()) + " at%")
            .orElseGet(() -> sample.sample().alloy().orElse(""));
        String description = sample.sample().description();
        page.open("span", "class", "about", "title", description).name(nominal);
        if (!description.isEmpty()) {
            page.text(" \u00b7 ").name(description);
        }
        page.close("span");
    }

    private static String instead(SampleLine line) {
        return line.found().isEmpty() ? line.instead() : "No spots yet.";
    }

    private static void finding(Highlight found, Markup page) {
        page.open("td", "class", "finding").raw(VerdictSign.inline(found.words())).text(" ")
            .element("b", found.element()).text(" ").element("span", found.words(), "class", "v-" + found.verdict()
            .word())
            .text(" ").element("span", found.size(), "class", "size").text(" in ").name(found.group());
        found.rival().ifPresent(rival -> page.open("span", "class", "rival").text("could also be: " + rival)
            .close("span"));
        page.close("td").open("td", "class", "strip").raw(FactorStrip.of(found)).close("td");
        page.element("td", found.howSure(), "class", "sure");
    }

    private static void measured(SampleLine line, Markup page) {
        page.text(Listing.count(line.sample().spotCount(), "spot"));
        line.found().filter(found -> found.spotCount() > 0).ifPresent(found -> {
            page.text(" on " + Listing.count(found.particleCount(), "particle"));
            page.element("span", tests(found.tests()), "class", "about");
            if (found.warningCount() > 0) {
                page.element("span", Listing.count(found.warningCount(), "warning"), "class", "warning");
            }
        });
    }

    private static String tests(Map<Verdict, Integer> tests) {
        return String.join(", ", List.of(Verdict.values()).stream().filter(tests::containsKey)
            .map(verdict -> tests.get(verdict) + " " + verdict.word()).toList());
    }

    private void turn(Markup page) {
        page.open("nav", "class", "turn", "aria-label", "Pages of the list");
        if (!isFirst) {
            page.link(look.address(Look.SAMPLES, filter.parameters()), "Back to the first").text(" ");
        }
        next.ifPresent(cursor -> {
            Map<String, String> further = new LinkedHashMap<>(filter.parameters());
            further.put("cursor", cursor);
            page.element("a", lines.isEmpty() ? "Look further" : "Further samples", "href",
                look.address(Look.SAMPLES, further), "rel", "next");
            if (!filter.verdict().isEmpty()) {
                page.text(" " + Listing.count(examined, "sample") + " looked at for this page.");
            }
        });
        page.close("nav");
    }
}
