package surfeit.segregation.sums;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import surfeit.composition.Basis;
import surfeit.composition.NominalFractions;
import surfeit.composition.Phase;
import surfeit.element.Element;
import surfeit.spot.ReportedValue;
import surfeit.spot.ReportedValues;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/**
 * The spot that is being added up, worked out once for all groups of all ways of grouping that it belongs to, beside
 * what all of them go by. Refilled for every spot. Not thread-safe.
 */
public final class SpotInHand {
    private static final Object NONE_YET = new Object();
    private static final double NOT_COUNTED = Double.NaN;

    private final Sample sample;
    private final NominalFractions nominal;
    private final double defaultLimit;
    private final PhaseTally.Source phases;
    private final Map<List<Element>, SpotParts> parts = new HashMap<>();
    private final Map<List<Element>, SpotParts> partsWithNegatives = new HashMap<>();

    private Object spot = NONE_YET;
    private ReportedValues values = ReportedValues.of(Map.of());
    private double total;
    private boolean hasLines;
    private Basis basis = Basis.ATOMIC;
    private double allAtoms;
    private double[] shares = new double[4];
    private final boolean[] listed;
    private boolean hasNegative;
    private boolean hasZero;

    /** @param defaultLimit mass fraction taken as the limit where none is stated */
    public SpotInHand(Sample sample, NominalFractions nominal, double defaultLimit, List<Phase> phases) {
        this.sample = sample;
        this.nominal = nominal;
        this.defaultLimit = defaultLimit;
        this.phases = new PhaseTally.Source(phases, nominal);
        this.listed = new boolean[nominal.elements().size()];
    }

    public Sample sample() {
        return sample;
    }

    public NominalFractions nominal() {
        return nominal;
    }

    public double defaultLimit() {
        return defaultLimit;
    }

    PhaseTally.Source phases() {
        return phases;
    }

    /** The reader of parts over these elements, one for all groups that close over them alike. */
    SpotParts parts(List<Element> elements, boolean zeroIsNumber) {
        return (zeroIsNumber ? partsWithNegatives : parts)
            .computeIfAbsent(elements, over -> new SpotParts(over, defaultLimit, zeroIsNumber));
    }

    /** Takes a spot in hand, unless it is already. */
    public void take(Spot next) {
        if (spot == next) {
            return;
        }
        spot = next;
        values = ReportedValues.of(next.values());
        basis = next.basis();
        readShares();
        hasNegative = false;
        hasZero = false;
        List<Element> elements = nominal.elements();
        for (int i = 0; i < listed.length; i++) {
            int place = values.place(elements.get(i));
            listed[i] = place >= 0 && !(values.value(place) instanceof ReportedValue.NotReported);
            if (place >= 0 && values.value(place) instanceof ReportedValue.Measured measured) {
                hasNegative |= measured.fraction() < 0;
                hasZero |= measured.fraction() == 0;
            }
        }
    }

    private void readShares() {
        if (shares.length < values.size()) {
            shares = new double[values.size()];
        }
        total = 0;
        hasLines = false;
        allAtoms = 0;
        Set<Element> excluded = sample.excludedElements();
        for (int i = 0; i < values.size(); i++) {
            shares[i] = NOT_COUNTED;
            if (values.value(i) instanceof ReportedValue.Measured measured) {
                total += measured.fraction();
                hasLines |= measured.line().isPresent();
                if (!excluded.contains(values.element(i))) {
                    shares[i] = atoms(i, measured.fraction());
                    allAtoms += shares[i];
                }
            }
        }
        for (int i = 0; i < values.size(); i++) {
            shares[i] = allAtoms > 0 ? shares[i] / allAtoms : NOT_COUNTED;
        }
    }

    private double atoms(int place, double fraction) {
        return basis == Basis.MASS ? fraction / values.element(place).atomicWeight() : fraction;
    }

    ReportedValues values() {
        return values;
    }

    /** Sum of all reported numbers, as a fraction of the spot's basis. */
    double total() {
        return total;
    }

    /** Whether any number states the line it was read from. */
    boolean hasLines() {
        return hasLines;
    }

    /** Whether what is reported in this place is a number of an element that is not excluded. */
    boolean isCounted(int place) {
        return !Double.isNaN(shares[place]);
    }

    /** Share of all atoms that are counted, of the element reported in this place. */
    double share(int place) {
        return shares[place];
    }

    /** What the share of the element reported in this place would be, had it this fraction of the spot's basis. */
    double shareOf(int place, double fraction) {
        return atoms(place, fraction) / allAtoms;
    }

    /** Whether the spot says anything of an element of the nominal, by its place there. */
    boolean isListed(int nominalPlace) {
        return listed[nominalPlace];
    }

    /** Elements of the nominal of which the spot says anything. */
    Set<Element> listed() {
        Set<Element> elements = new TreeSet<>();
        for (int i = 0; i < listed.length; i++) {
            if (listed[i]) {
                elements.add(nominal.elements().get(i));
            }
        }
        return elements;
    }

    /** Whether an element of the nominal has a negative value. */
    boolean hasNegative() {
        return hasNegative;
    }

    /** Whether an element of the nominal has the value zero. */
    boolean hasZero() {
        return hasZero;
    }
}
