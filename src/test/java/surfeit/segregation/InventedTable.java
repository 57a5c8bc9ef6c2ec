package surfeit.segregation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.element.Element;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Conditions;
import surfeit.spot.ReferencePiece;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/**
 * Spots written down as a lab's table would hold them: percent as text, {@code "<0.3"}, {@code "n.d."}. All numbers
 * made with it are invented; none was measured.
 */
public final class InventedTable {
    private final List<Spot> spots = new ArrayList<>();
    private final Basis basis;
    private final List<Element> elements = new ArrayList<>();
    private Optional<String> session = Optional.of("s1");
    private Optional<ReferencePiece> reference = Optional.empty();
    private Conditions conditions = Conditions.UNKNOWN;
    private Optional<String> feature = Optional.of("surface");
    private OptionalDouble uncertainty = OptionalDouble.empty();

    private InventedTable(Basis basis, String symbols) {
        this.basis = basis;
        for (String symbol : symbols.split(" ")) {
            elements.add(Element.of(symbol));
        }
    }

    /** A table with these elements as its columns, in wt%. */
    public static InventedTable inMass(String symbols) {
        return new InventedTable(Basis.MASS, symbols);
    }

    /** A table with these elements as its columns, in at%. */
    public static InventedTable inAtoms(String symbols) {
        return new InventedTable(Basis.ATOMIC, symbols);
    }

    public InventedTable session(String name) {
        session = name.isEmpty() ? Optional.empty() : Optional.of(name);
        return this;
    }

    public InventedTable feature(String name) {
        feature = Optional.of(name);
        return this;
    }

    InventedTable unlabelled() {
        feature = Optional.empty();
        return this;
    }

    public InventedTable atKev(double kev) {
        conditions = new Conditions(OptionalDouble.of(kev), OptionalDouble.empty(), OptionalDouble.empty(),
            OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty());
        return this;
    }

    /** Standard uncertainty in percent of every number of the following rows; 0 for none stated. */
    InventedTable uncertainty(double percent) {
        uncertainty = percent > 0 ? OptionalDouble.of(percent / 100) : OptionalDouble.empty();
        return this;
    }

    /** The following rows are of a piece of known composition. */
    public InventedTable onReference(Nominal trueComposition, boolean sameMaterial) {
        reference = Optional.of(new ReferencePiece(trueComposition, sameMaterial));
        return this;
    }

    public InventedTable onSpecimen() {
        reference = Optional.empty();
        return this;
    }

    /** One spot: its particle (empty for none) and one cell per column, parted by blanks; {@code -} for an empty cell. */
    public InventedTable row(String particle, String cells) {
        String[] texts = cells.strip().split("\\s+");
        if (texts.length != elements.size()) {
            throw new IllegalArgumentException("Expected " + elements.size() + " cells, got \"" + cells + "\".");
        }
        Map<Element, ReportedValue> values = new LinkedHashMap<>();
        for (int i = 0; i < texts.length; i++) {
            values.put(elements.get(i), value(texts[i]));
        }
        spots.add(new Spot(String.format(Locale.ROOT, "spot %d", spots.size() + 1),
            particle.isEmpty() ? Optional.empty() : Optional.of(particle), feature, session, Optional.empty(), conditions,
            reference, basis, values));
        return this;
    }

    /** One spot of numbers alone, each printed with two decimals. */
    public InventedTable row(String particle, double... percents) {
        return row(particle, Arrays.stream(percents).mapToObj(percent -> String.format(Locale.ROOT, "%.2f", percent))
            .collect(Collectors.joining(" ")));
    }

    private ReportedValue value(String text) {
        if (text.equals("-")) {
            return new ReportedValue.NotReported();
        }
        if (text.equals("n.d.")) {
            return new ReportedValue.NotDetected(OptionalDouble.empty(), text);
        }
        if (text.startsWith("<")) {
            return new ReportedValue.BelowLimit(Double.parseDouble(text.substring(1)) / 100, text);
        }
        return new ReportedValue.Measured(Double.parseDouble(text) / 100, text, uncertainty, Optional.empty(),
            OptionalDouble.empty(), Optional.empty());
    }

    List<Spot> spots() {
        return List.copyOf(spots);
    }

    public SpotSource source() {
        return SpotSource.of(spots());
    }
}
