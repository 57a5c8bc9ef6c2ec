package surfeit.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import surfeit.spot.Sample;

/**
 * One thing the lab says of a sample: {@code beam}, {@code 15 keV}.
 *
 * @param name  what it is about
 * @param value what is said, with its unit
 * @param ofLab true where the value is in the lab's own words
 */
public record SampleFact(String name, String value, boolean ofLab) {
    /** Name of the lab's free text. */
    public static final String DESCRIPTION = "description";

    /**
     * Everything stated of a sample, and its form even where that is the default, but for its alloy or nominal and how its
     * numbers are judged.
     */
    public static List<SampleFact> of(Sample sample) {
        List<SampleFact> facts = new ArrayList<>();
        add(facts, DESCRIPTION, sample.description());
        facts.add(new SampleFact("surface taken as", sample.form().words(), false));
        add(facts, "particle diameter", sample.geometry().particleDiameterUm(), " \u00b5m");
        add(facts, "beam", sample.geometry().beamEnergyKev(), " keV");
        add(facts, "take-off angle", sample.geometry().takeOffAngleDeg(), "\u00b0");
        add(facts, "detector resolution", sample.geometry().detectorFwhmEv(), " eV");
        sample.coating().ifPresent(coating -> facts.add(new SampleFact("coating", coating.element().symbol()
            + coating.thicknessNm().stream().mapToObj(nm -> ", " + Digits.setting(nm) + " nm")
                .collect(Collectors.joining()), false)));
        add(facts, "mount", sample.mount().orElse(""));
        add(facts, "preparation", sample.preparation().stream().map(step -> step.step()
            + step.reagent().map(reagent -> " (" + reagent + ")").orElse("")).collect(Collectors.joining(", ")));
        add(facts, "phases by diffraction", Listing.and(sample.diffractionPhases()));
        return facts;
    }

    private static void add(List<SampleFact> facts, String name, String words) {
        if (!words.isBlank()) {
            facts.add(new SampleFact(name, words, true));
        }
    }

    private static void add(List<SampleFact> facts, String name, OptionalDouble value, String unit) {
        value.ifPresent(number -> facts.add(new SampleFact(name, Digits.setting(number) + unit, false)));
    }
}
