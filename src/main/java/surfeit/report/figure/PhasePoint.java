package surfeit.report.figure;

import java.util.ArrayList;
import java.util.List;
import surfeit.composition.NominalFractions;
import surfeit.composition.Phase;
import surfeit.composition.SourceRead;
import surfeit.element.Element;
import surfeit.report.Digits;

/**
 * A phase the alloy may be made of, as a point of the composition.
 *
 * @param name      its usual name
 * @param fractions its atomic fractions in the order of the nominal
 * @param words     composition, temperature, and whether it is from memory
 */
record PhasePoint(String name, double[] fractions, String words) {

    /** The phases that hold any of the nominal's elements. */
    static List<PhasePoint> of(List<Phase> phases, NominalFractions nominal) {
        List<PhasePoint> points = new ArrayList<>();
        for (Phase phase : phases) {
            phase.over(nominal.elements()).ifPresent(fractions ->
                points.add(new PhasePoint(phase.name(), fractions, words(phase, fractions, nominal.elements()))));
        }
        return points;
    }

    private static String words(Phase phase, double[] fractions, List<Element> elements) {
        List<String> parts = new ArrayList<>();
        for (int i = 0; i < fractions.length; i++) {
            if (fractions[i] > 0) {
                parts.add(elements.get(i) + " " + Digits.plain(fractions[i] * 100));
            }
        }
        String temperature = phase.temperatureCelsius().stream()
            .mapToObj(degrees -> ", at " + Digits.setting(degrees) + " \u00b0C").findFirst().orElse("");
        String memory = switch (phase.sourceRead()) {
            case YES -> "";
            case NO -> ", from memory";
            case PART -> ", partly from memory";
        };
        return phase.name() + ": " + String.join(", ", parts) + " at%" + temperature + memory;
    }

    /** One note that tells all of them; empty text where there are none. */
    static String note(List<PhasePoint> phases) {
        return phases.isEmpty() ? "" : "Phases: " + String.join("; ", phases.stream().map(PhasePoint::words).toList())
            + ". A spot between two of them may hold both.";
    }
}
