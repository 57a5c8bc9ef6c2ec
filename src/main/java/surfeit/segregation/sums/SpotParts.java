package surfeit.segregation.sums;

import java.util.List;
import surfeit.composition.Basis;
import surfeit.composition.Closure;
import surfeit.element.Element;
import surfeit.spot.ReportedValue;
import surfeit.spot.ReportedValues;
import surfeit.spot.Spot;

/**
 * Reads one spot into parts of the closed elements, before closing; refilled for every spot. Not thread-safe.
 *
 * <p>An element listed with a number, also a negative one, is a number. Listed below a limit, not detected, or zero
 * while no spot of the group is negative, it lies between zero and its limit; so it does when this spot does not list
 * it but another one of the group does. The limit is the stated one; else the lab's default mass fraction.
 *
 * <p>The standard uncertainty of a spot is the stated one, or that {@linkplain Counting from its counts}, and exists only if
 * every number of the spot has it; a value below its limit L counts L / 3.29.
 */
public final class SpotParts {
    private static final Object NONE_YET = new Object();
    private static final ReportedValue NOT_LISTED = new ReportedValue.NotReported();

    private final Element[] elements;
    private final double[] atomicDivisors;
    private final double[] massDivisors;
    private final double defaultLimit;
    private final boolean zeroIsNumber;

    final double[] values;
    final double[] limits;
    final double[] uncertainties;
    final boolean[] below;
    boolean hasUncertainty;
    boolean anyBelow;
    final boolean[] limitAssumed;
    private final double[] closed;
    private Object last = NONE_YET;
    private boolean isClosed;
    private boolean holdAll;
    private double sum;

    /**
     * @param elements     the elements closed over, in order
     * @param defaultLimit mass fraction taken as the limit where none is stated
     * @param zeroIsNumber true where the group holds negative values, so that zero is a number like any other
     */
    public SpotParts(List<Element> elements, double defaultLimit, boolean zeroIsNumber) {
        this.elements = elements.toArray(Element[]::new);
        this.atomicDivisors = Closure.divisors(elements, Basis.ATOMIC, Basis.ATOMIC);
        this.massDivisors = Closure.divisors(elements, Basis.MASS, Basis.ATOMIC);
        this.defaultLimit = defaultLimit;
        this.zeroIsNumber = zeroIsNumber;
        int n = elements.size();
        values = new double[n];
        limits = new double[n];
        uncertainties = new double[n];
        below = new boolean[n];
        limitAssumed = new boolean[n];
        closed = new double[n];
    }

    /**
     * Reads the spot, unless it is read already. Values, limits and uncertainties are atomic parts in a common unit, not
     * yet closed.
     */
    public void read(Spot spot) {
        if (last == spot) {
            return;
        }
        last = spot;
        isClosed = false;
        ReportedValues reported = ReportedValues.of(spot.values());
        int found = 0;
        double[] divisors = divisors(spot);
        hasUncertainty = true;
        anyBelow = false;
        sum = 0;
        double mass = 0;
        for (int i = 0; i < values.length; i++) {
            int place = reported.place(elements[i], i);
            found += place >= 0 ? 1 : 0;
            readOne(place >= 0 ? reported.value(place) : NOT_LISTED, i, divisors[i]);
            sum += values[i];
            mass += values[i] * massDivisors[i];
        }
        holdAll = found == reported.size();
        fillLimits(mass);
        if (hasUncertainty && anyBelow) {
            for (int i = 0; i < values.length; i++) {
                uncertainties[i] = below[i] ? limits[i] / Counting.LIMIT_TO_UNCERTAINTY : uncertainties[i];
            }
        }
        if (!(sum > 0)) {
            hasUncertainty = false;
        }
    }

    private void readOne(ReportedValue value, int i, double divisor) {
        below[i] = !(value instanceof ReportedValue.Measured measured && (measured.fraction() != 0 || zeroIsNumber));
        limits[i] = Double.NaN;
        values[i] = 0;
        if (value instanceof ReportedValue.Measured measured) {
            limits[i] = below[i] ? Counting.limit(measured) / divisor : Double.NaN;
            values[i] = below[i] ? 0 : measured.fraction() / divisor;
            uncertainties[i] = Counting.uncertainty(measured) / divisor;
            hasUncertainty &= below[i] || !Double.isNaN(uncertainties[i]);
        } else if (value instanceof ReportedValue.BelowLimit belowLimit) {
            limits[i] = belowLimit.limitFraction() / divisor;
        } else if (value instanceof ReportedValue.NotDetected notDetected) {
            limits[i] = notDetected.limitFraction().orElse(Double.NaN) / divisor;
        }
        anyBelow |= below[i];
    }

    /** A default limit is a mass fraction of the closed elements, so that at% and wt% of one spot agree. */
    private void fillLimits(double mass) {
        for (int i = 0; i < limits.length; i++) {
            limitAssumed[i] = below[i] && Double.isNaN(limits[i]);
            if (limitAssumed[i]) {
                limits[i] = defaultLimit * mass / massDivisors[i];
            }
        }
    }

    /** Sum of the parts with those below their limit as the limit. */
    double sumAtLimit() {
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            sum += below[i] ? limits[i] : values[i];
        }
        return sum;
    }

    /** The parts, those below their limit as zero or as the limit, closed to one. */
    public void close(boolean atLimit, double[] closed) {
        double total = atLimit ? sumAtLimit() : sum;
        for (int i = 0; i < closed.length; i++) {
            closed[i] = (atLimit && below[i] ? limits[i] : values[i]) / total;
        }
    }

    private double[] divisors(Spot spot) {
        return spot.basis() == Basis.MASS ? massDivisors : atomicDivisors;
    }

    /** Step of the last printed digit of an element of the spot, as a part; 0 where it has no number. */
    double step(Spot spot, int i) {
        return spot.values().get(elements[i]) instanceof ReportedValue.Measured measured
            ? measured.roundingStep() / divisors(spot)[i] : 0;
    }

    /** The parts, those below their limit as zero, closed to one. To be read only. */
    double[] closed() {
        if (!isClosed) {
            close(false, closed);
            isClosed = true;
        }
        return closed;
    }

    /** Whether the spot reports nothing but these elements. */
    boolean holdAll() {
        return holdAll;
    }

    /** Sum of the parts with those below their limit as zero. */
    public double sum() {
        return sum;
    }

    /** Whether every number of the spot has a standard uncertainty. */
    public boolean hasUncertainty() {
        return hasUncertainty;
    }

    /** Standard uncertainty of a part before closing, where {@link #hasUncertainty}. */
    public double uncertainty(int part) {
        return uncertainties[part];
    }

    /** Whether a part lies between zero and its limit. */
    public boolean isBelow(int part) {
        return below[part];
    }

    /** Limit of such a part before closing. */
    public double limit(int part) {
        return limits[part];
    }

    public boolean isClosable() {
        return sum > 0 && Double.isFinite(sum);
    }
}
