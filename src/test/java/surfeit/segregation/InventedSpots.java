package surfeit.segregation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.Basis;
import surfeit.composition.Closure;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.element.Element;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Conditions;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/** Builds invented spots for tests; nothing here was measured. */
public final class InventedSpots {
    private final List<Spot> spots = new ArrayList<>();
    private Optional<String> session = Optional.of("s1");
    private OptionalDouble beam = OptionalDouble.of(15);
    private Basis basis = Basis.ATOMIC;

    public InventedSpots session(String name) {
        session = Optional.of(name);
        return this;
    }

    public InventedSpots beam(double kev) {
        beam = OptionalDouble.of(kev);
        return this;
    }

    public InventedSpots basis(Basis other) {
        basis = other;
        return this;
    }

    /** A spot: {@code "Ag 62.1, Cu 37.9, Zn n.d., O <0.3, Sn -"} with a dash for an empty cell. */
    public InventedSpots add(String feature, String particle, String values) {
        Map<Element, ReportedValue> reported = new LinkedHashMap<>();
        for (String part : values.split(",")) {
            String[] words = part.strip().split(" ");
            reported.put(Element.of(words[0]), value(words[1]));
        }
        return add(feature, particle, reported);
    }

    public InventedSpots add(String feature, String particle, Map<Element, ReportedValue> reported) {
        spots.add(new Spot("spot " + (spots.size() + 1), particle.isEmpty() ? Optional.empty() : Optional.of(particle),
            feature.isEmpty() ? Optional.empty() : Optional.of(feature), session, Optional.empty(),
            new Conditions(beam, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(),
                OptionalDouble.empty()), Optional.empty(), basis, reported));
        return this;
    }

    private static ReportedValue value(String text) {
        if (text.equals("-")) {
            return new ReportedValue.NotReported();
        }
        if (text.equals("n.d.")) {
            return new ReportedValue.NotDetected(OptionalDouble.empty(), text);
        }
        return text.startsWith("<") ? new ReportedValue.BelowLimit(Double.parseDouble(text.substring(1)) / 100, text)
            : ReportedValue.Measured.of(Double.parseDouble(text) / 100, text);
    }

    public List<Spot> list() {
        return List.copyOf(spots);
    }

    public Interpretation against(String nominal) {
        return against(nominal, GroupBy.FEATURE);
    }

    public Interpretation against(String nominal, GroupBy by) {
        Nominal parsed = NominalText.parse(nominal, Basis.ATOMIC);
        return against(Sample.of(Optional.empty(), Optional.of(parsed)), by);
    }

    public Interpretation against(Sample sample, GroupBy by) {
        return new Interpreter().interpret(sample, sample.nominal().orElseThrow(), SpotSource.of(spots), by, 0.003);
    }

    public static ElementFinding element(GroupFinding group, String symbol) {
        return group.elements().stream().filter(e -> e.element().symbol().equals(symbol)).findFirst().orElseThrow();
    }

    public static GroupFinding group(Interpretation interpretation, String name) {
        return interpretation.groups().stream().filter(g -> g.name().equals(name)).findFirst().orElseThrow();
    }

    /** The same spots reported in wt%, with all digits a double has. */
    public static List<Spot> inMassPercent(List<Spot> spots) {
        return spots.stream().map(spot -> {
            List<Element> elements = List.copyOf(spot.values().keySet());
            double[] fractions = elements.stream()
                .mapToDouble(e -> ((ReportedValue.Measured) spot.values().get(e)).fraction()).toArray();
            double[] mass = Closure.convert(fractions, elements, Basis.ATOMIC, Basis.MASS);
            Map<Element, ReportedValue> values = new LinkedHashMap<>();
            for (int i = 0; i < mass.length; i++) {
                values.put(elements.get(i),
                    ReportedValue.Measured.of(mass[i], String.format(Locale.ROOT, "%.17f", mass[i] * 100)));
            }
            return new Spot(spot.label(), spot.particle(), spot.feature(), spot.session(), spot.acquiredTime(), spot.conditions(),
                spot.reference(), Basis.MASS, values);
        }).toList();
    }
}
