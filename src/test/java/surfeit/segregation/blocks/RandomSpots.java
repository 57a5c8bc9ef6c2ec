package surfeit.segregation.blocks;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.element.Element;
import surfeit.spot.Conditions;
import surfeit.spot.Position;
import surfeit.spot.ReferencePiece;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/**
 * Invented spots of an Ag-Cu-Sn powder with everything that makes a sum awkward: elements that turn up late, negative
 * values, zeros, limits, values nobody reported, spots without particle or feature, several sessions and beam energies.
 */
public final class RandomSpots {
    public static final Nominal NOMINAL = NominalText.parse("Ag:58,Cu:36,Sn:6", Basis.ATOMIC);

    private final Random random;
    private final int sessions;
    private final boolean uncertainties;
    private final int tinFrom;
    private final int negativeFrom;
    private int made;

    public RandomSpots(long seed) {
        random = new Random(seed);
        sessions = 1 + random.nextInt(4);
        uncertainties = random.nextBoolean();
        tinFrom = random.nextInt(80);
        negativeFrom = random.nextInt(200);
    }

    public List<Spot> next(int count) {
        List<Spot> spots = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            spots.add(next());
        }
        return spots;
    }

    public Spot next() {
        return named("S" + made++, Optional.of("s" + (1 + random.nextInt(sessions))), Optional.empty());
    }

    /** A spot on a piece of the alloy itself, measured in the first session. */
    public Spot onReference() {
        return named("R" + made++, Optional.of("s1"), Optional.of(new ReferencePiece(NOMINAL, true)));
    }

    /** Other values for a spot; its name, session and piece stay. */
    public Spot again(Spot spot) {
        return named(spot.label(), spot.session(), spot.reference());
    }

    private Spot named(String label, Optional<String> session, Optional<ReferencePiece> reference) {
        Optional<String> particle = chance(0.1) ? Optional.empty() : Optional.of("P" + random.nextInt(4));
        Optional<String> feature = chance(0.1) ? Optional.empty() : Optional.of(chance(0.5) ? "rim" : "core");
        return new Spot(label, particle, feature, session, Optional.empty(),
            reference.isPresent() ? Conditions.UNKNOWN : conditions(), reference,
            chance(0.7) ? Basis.ATOMIC : Basis.MASS, values(reference.isPresent()));
    }

    private Conditions conditions() {
        return new Conditions(chance(0.03) ? OptionalDouble.of(10) : OptionalDouble.empty(), OptionalDouble.empty(),
            real(0.2, 1, 5), real(0.3, 0.95, 1.02), chance(0.3)
            ? Optional.of(Position.values()[random.nextInt(Position.values().length)]) : Optional.empty(),
            real(0.3, -20, 20));
    }

    private OptionalDouble real(double chance, double low, double high) {
        return chance(chance) ? OptionalDouble.of(low + random.nextDouble() * (high - low)) : OptionalDouble.empty();
    }

    private Map<Element, ReportedValue> values(boolean onReference) {
        Map<Element, ReportedValue> values = new LinkedHashMap<>();
        double silver = 0.55 + 0.05 * random.nextGaussian();
        values.put(Element.of("Ag"), measured(Math.max(silver, 0.01)));
        values.put(Element.of("Cu"), chance(0.01) ? new ReportedValue.NotReported() : measured(Math.max(0.95 - silver, 0.01)));
        if (onReference || made > tinFrom || chance(0.01)) {
            values.put(Element.of("Sn"), tin());
        }
        if (chance(0.4)) {
            values.put(Element.of("O"), chance(0.7) ? measured(0.02 * random.nextDouble())
                : new ReportedValue.NotDetected(OptionalDouble.empty(), "n.d."));
        }
        return values;
    }

    private ReportedValue tin() {
        double kind = random.nextDouble();
        return kind < 0.6 ? measured(0.05 + 0.01 * random.nextGaussian())
            : kind < 0.7 ? new ReportedValue.BelowLimit(0.004 + 0.004 * random.nextDouble(), "<0.8")
            : kind < 0.8 ? new ReportedValue.NotDetected(OptionalDouble.empty(), "n.d.")
            : kind < 0.9 ? measured(0)
            : made > negativeFrom && chance(0.2) ? measured(-0.002) : new ReportedValue.NotReported();
    }

    private ReportedValue measured(double fraction) {
        return new ReportedValue.Measured(fraction, chance(0.5) ? "1.23" : "1.2",
            uncertainties || chance(0.1) ? OptionalDouble.of(0.004) : OptionalDouble.empty(), Optional.empty(),
            chance(0.1) ? OptionalDouble.of(0.003) : OptionalDouble.empty(),
            chance(0.1) ? Optional.of("La") : Optional.empty());
    }

    private boolean chance(double share) {
        return random.nextDouble() < share;
    }
}
