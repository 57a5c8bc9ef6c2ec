package surfeit.report.figure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.Basis;
import surfeit.composition.NominalFractions;
import surfeit.composition.NominalText;
import surfeit.composition.Phase;
import surfeit.composition.SourceRead;
import surfeit.element.Element;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.screening.SpotReading;
import surfeit.segregation.screening.SpotReading.ElementReading;
import surfeit.spot.Conditions;
import surfeit.spot.Spot;

/** Readings of spots put together by hand; every number is invented. */
final class InventedReadings {
    private final NominalFractions nominal;
    private final List<SpotReading> readings = new ArrayList<>();
    private OptionalDouble uncertainty = OptionalDouble.of(0.004);

    /** Against a nominal in at%: {@code Ag:60.1,Cu:39.9}. */
    InventedReadings(String nominal) {
        this.nominal = NominalText.parse(nominal, Basis.ATOMIC).resolve();
    }

    NominalFractions nominal() {
        return nominal;
    }

    /** The next spots have no uncertainty, neither stated nor from repeats. */
    InventedReadings withoutScatter() {
        uncertainty = OptionalDouble.empty();
        return this;
    }

    /** A spot: {@code "Ag 21.2, Cu 78.8"}; a value below its limit as {@code "Zn <0.3"}. */
    InventedReadings add(String feature, String particle, String values) {
        return add(feature, particle, values, Verdict.INCONCLUSIVE);
    }

    /** The same; the first element has the verdict, the others are inconclusive. */
    InventedReadings add(String feature, String particle, String values, Verdict first) {
        List<ElementReading> elements = new ArrayList<>();
        for (String part : values.split(",")) {
            String[] words = part.strip().split(" ");
            int i = nominal.elements().indexOf(Element.of(words[0]));
            boolean below = words[1].startsWith("<");
            double fraction = Double.parseDouble(below ? words[1].substring(1) : words[1]) / 100;
            elements.add(new ElementReading(Element.of(words[0]), below ? 0 : fraction, uncertainty, below,
                below ? OptionalDouble.of(fraction) : OptionalDouble.empty(), nominal.low(i), nominal.high(i),
                OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(),
                elements.isEmpty() ? first : Verdict.INCONCLUSIVE));
        }
        readings.add(new SpotReading(spot(particle), feature, elements, List.of()));
        return this;
    }

    private Spot spot(String particle) {
        return new Spot("spot " + (readings.size() + 1), particle.isEmpty() ? Optional.empty() : Optional.of(particle),
            Optional.empty(), Optional.empty(), Optional.empty(),
            new Conditions(OptionalDouble.empty(), OptionalDouble.empty(),
            OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty()), Optional.empty(),
            Basis.ATOMIC, Map.of());
    }

    SpotPoints points() {
        return SpotPoints.of(nominal, readings);
    }

    /** A phase: {@code phase("Ag-Cu", "(Ag)", "Ag", 0.86, "Cu", 0.14)}. */
    static Phase phase(String system, String name, Object... symbolsAndFractions) {
        Map<Element, Double> fractions = new LinkedHashMap<>();
        for (int i = 0; i < symbolsAndFractions.length; i += 2) {
            fractions.put(Element.of((String) symbolsAndFractions[i]), (Double) symbolsAndFractions[i + 1]);
        }
        return new Phase(system, name, fractions, OptionalDouble.empty(), "invented", OptionalDouble.of(779),
            "invented", SourceRead.NO);
    }
}
