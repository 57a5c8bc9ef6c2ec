package surfeit.http.board;

import java.util.List;
import java.util.stream.Collectors;
import surfeit.lab.StoredSample;
import surfeit.report.Digits;
import surfeit.report.Listing;
import surfeit.spot.Sample;

/** What the lab says of a sample, in a few lines. */
final class SampleFacts {
    private SampleFacts() {
    }

    static void write(StoredSample stored, Markup page) {
        Sample sample = stored.sample();
        if (!sample.description().isEmpty()) {
            page.open("p", "class", "description").name(sample.description()).close("p");
        }
        page.open("dl", "class", "facts");
        sample.alloy().ifPresent(alloy -> page.element("dt", "alloy").open("dd").link("/v1/alloys/" + alloy, alloy)
            .close("dd"));
        sample.geometry().beamEnergyKev().ifPresent(kev -> fact(page, "beam", Digits.setting(kev) + " keV"));
        sample.geometry().particleDiameterUm().ifPresent(um -> fact(page, "particles", Digits.setting(um)
            + " \u00b5m"));
        sample.mount().ifPresent(mount -> page.element("dt", "mount").open("dd").name(mount).close("dd"));
        if (!sample.preparation().isEmpty()) {
            page.element("dt", "preparation").open("dd").name(sample.preparation().stream().map(step -> step.step()
                + step.reagent().map(reagent -> " (" + reagent + ")").orElse("")).collect(Collectors.joining(", ")))
                .close("dd");
        }
        List<String> phases = sample.diffractionPhases();
        if (!phases.isEmpty()) {
            page.element("dt", "phases by diffraction").open("dd").name(Listing.and(phases)).close("dd");
        }
        page.element("dt", "revision").open("dd").text(stored.revision() + ", changed ");
        Moment.write(stored.changed(), page);
        page.close("dd").close("dl");
    }

    private static void fact(Markup page, String what, String value) {
        page.element("dt", what).element("dd", value);
    }
}
