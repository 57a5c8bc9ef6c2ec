package surfeit.http.board;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.report.Digits;
import surfeit.report.Listing;
import surfeit.report.figure.VerdictSign;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.screening.SpotReading;
import surfeit.segregation.screening.SpotReading.ElementReading;
import surfeit.spot.Spot;

/**
 * The spots of a sample in a table, each screened by itself.
 *
 * @param elements the closed elements
 * @param shown    the first of them
 * @param count    all of them
 */
public record SpotsSection(List<Element> elements, List<SpotReading> shown, long count) {
    /** Rows of the table; the whole is a link away. Judgement. */
    public static final int MOST_ROWS = 200;

    void write(Markup page) {
        page.open("section", "class", "spots").element("h2", "Spots");
        if (shown.isEmpty()) {
            page.element("p", count == 0 ? "No spots yet." : Listing.count(count, "spot")
                + " are too many to show here; "
                + "they are a link away, below.").close("section");
            return;
        }
        page.element("p", (shown.size() < count ? "The first " + shown.size() + " of " : "") + Listing.count(count,
            "spot")
            + ", normalised to 100 at% over the nominal elements. A sign screens that spot alone; all spots share one "
            + "calibration error, so signs come and go together.", "class", "about");
        page.open("div", "class", "wide", "role", "region", "tabindex", "0", "aria-label", "Spots").open("table")
            .open("thead").open("tr").element("th", "spot", "scope", "col").element("th", "feature", "scope", "col")
            .element("th", "particle", "scope", "col").element("th", "session", "scope", "col");
        elements.forEach(element -> page.element("th", element.symbol() + " at%", "scope", "col", "class", "number"));
        boolean timed = shown.stream().anyMatch(reading -> reading.spot().acquiredTime().isPresent());
        if (timed) {
            page.element("th", "acquired", "scope", "col");
        }
        page.close("tr").close("thead").open("tbody");
        shown.forEach(reading -> row(reading, timed, page));
        page.close("tbody").close("table").close("div").close("section");
    }

    private void row(SpotReading reading, boolean timed, Markup page) {
        Spot spot = reading.spot();
        page.open("tr").open("th", "scope", "row").name(spot.label()).close("th");
        name(spot.feature(), page);
        name(spot.particle(), page);
        name(spot.session(), page);
        for (Element element : elements) {
            page.open("td", "class", "number");
            reading.elements().stream().filter(own -> own.element().equals(element)).findFirst()
                .ifPresentOrElse(own -> value(own, page), () -> page.text("\u2013"));
            page.close("td");
        }
        if (timed) {
            page.open("td");
            spot.acquiredTime().ifPresent(time -> Moment.write(time.toInstant(), page));
            page.close("td");
        }
        page.close("tr");
    }

    private static void name(Optional<String> word, Markup page) {
        page.open("td");
        word.ifPresent(page::name);
        page.close("td");
    }

    private static void value(ElementReading reading, Markup page) {
        if (reading.verdict() == Verdict.ENRICHED || reading.verdict() == Verdict.DEPLETED) {
            page.raw(VerdictSign.inline(reading.verdict().word())).element("span", reading.verdict().word(), "class",
                "unseen").text(" ");
        }
        OptionalDouble limit = reading.limit();
        page.text(reading.belowLimit() && limit.isPresent() ? "< " + Digits.nominalPercent(limit.getAsDouble())
            : Digits.inColumn(reading.atomicFraction() * 100));
    }
}
