package surfeit.http.board;

import java.util.List;
import surfeit.lab.StoredSample;
import surfeit.report.SampleFact;
import surfeit.spot.Sample;

/** What the lab says of a sample, in a few lines. */
final class SampleFacts {
    private SampleFacts() {
    }

    static void write(StoredSample stored, Markup page) {
        Sample sample = stored.sample();
        List<SampleFact> facts = SampleFact.of(sample);
        facts.stream().filter(fact -> fact.name().equals(SampleFact.DESCRIPTION)).forEach(fact ->
            page.open("p", "class", "description").name(fact.value()).close("p"));
        page.open("dl", "class", "facts");
        sample.alloy().ifPresent(alloy -> page.open("div").element("dt", "alloy").open("dd")
            .link("/v1/alloys/" + alloy, alloy).close("dd").close("div"));
        facts.stream().filter(fact -> !fact.name().equals(SampleFact.DESCRIPTION)).forEach(fact -> fact(fact, page));
        page.open("div").element("dt", "revision").open("dd").text(stored.revision() + ", changed ");
        Moment.write(stored.changed(), page);
        page.close("dd").close("div").close("dl");
    }

    private static void fact(SampleFact fact, Markup page) {
        page.open("div").element("dt", fact.name()).open("dd");
        if (fact.ofLab()) {
            page.name(fact.value());
        } else {
            page.text(fact.value());
        }
        page.close("dd").close("div");
    }
}
