package surfeit.composition;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import surfeit.element.Element;

/**
 * A nominal composition as closed atomic fractions: per element the low and high limit, the middle, and the standard
 * uncertainty of a stated tolerance.
 *
 * <p>For a point low equals high. For a range the limit of element i is found with i at its limit and the others at
 * their middles scaled to the rest, then turned to atomic fractions. A tolerance of plus or minus T counts as a
 * rectangular distribution: the standard uncertainty is half the atomic difference between T above and T below,
 * divided by the root of 3 (JCGM 100:2008 section 4.3.7, from memory); with two elements it is the same for both.
 * Elements can be left out (excluded, or measured in no spot): every limit composition is then closed again over the
 * rest. Immutable, thread-safe.
 */
public final class NominalFractions {
    private static final double ROUNDING = 1e-9;

    private final List<Element> elements;
    private final boolean[] derived;
    /** Atomic compositions over {@link #elements}: row i has element i at its limit or end of tolerance. */
    private final double[][] atLow;
    private final double[][] atHigh;
    private final double[][] atToleranceLow;
    private final double[][] atToleranceHigh;
    private final double[] middle;

    private NominalFractions(List<Element> elements, boolean[] derived, double[][] atLow, double[][] atHigh,
                             double[][] atToleranceLow, double[][] atToleranceHigh, double[] middle) {
        this.elements = elements;
        this.derived = derived;
        this.atLow = atLow;
        this.atHigh = atHigh;
        this.atToleranceLow = atToleranceLow;
        this.atToleranceHigh = atToleranceHigh;
        this.middle = middle;
    }

    static NominalFractions of(Nominal nominal) {
        List<Element> elements = nominal.elements();
        List<NominalPart> parts = new ArrayList<>(nominal.parts().values());
        NominalLimits limits = nominal.limits();
        double[] divisors = Closure.divisors(elements, nominal.basis(), Basis.ATOMIC);
        double[] middle = Closure.close(limits.middle(), divisors);
        int n = parts.size();
        boolean[] derived = new boolean[n];
        double[][] low = new double[n][];
        double[][] high = new double[n][];
        double[][] toleranceLow = new double[n][];
        double[][] toleranceHigh = new double[n][];
        for (int i = 0; i < n; i++) {
            derived[i] = parts.get(i) instanceof NominalPart.Balance;
            boolean single = limits.low()[i] == limits.high()[i];
            low[i] = single ? middle : moved(limits, i, limits.low()[i], divisors, middle);
            high[i] = single ? middle : moved(limits, i, limits.high()[i], divisors, middle);
            double tolerance = parts.get(i) instanceof NominalPart.Point point ? point.tolerance() : 0;
            double value = limits.middle()[i];
            toleranceLow[i] = moved(limits, i, Math.max(value - tolerance, 0), divisors, middle);
            toleranceHigh[i] = moved(limits, i, Math.min(value + tolerance, 1), divisors, middle);
        }
        return new NominalFractions(elements, derived, low, high, toleranceLow, toleranceHigh, middle);
    }

    private static double[] moved(NominalLimits limits, int index, double value, double[] divisors, double[] middle) {
        return value == limits.middle()[index] ? middle : closeOr(middle, limits.middleWith(index, value), divisors);
    }

    /** Closes parts; where nothing is left of them, because only absent elements remain, the middle stands. */
    private static double[] closeOr(double[] middle, double[] parts, double[] divisors) {
        return Arrays.stream(parts).sum() > 0 ? Closure.close(parts, divisors) : middle;
    }

    /** The nominal without some elements, closed again over the rest; they are dropped from data and nominal alike. */
    public NominalFractions without(Set<Element> dropped) {
        return over(elements.stream().filter(element -> !dropped.contains(element)).toList());
    }

    /**
     * The nominal closed over some of its elements, in the order given.
     *
     * @throws CompositionException where the nominal has nothing of these elements
     */
    public NominalFractions over(List<Element> some) {
        if (some.equals(elements)) {
            return this;
        }
        int[] kept = some.stream().mapToInt(elements::indexOf).toArray();
        if (Arrays.stream(kept).anyMatch(i -> i < 0)) {
            throw new IllegalArgumentException("Expected elements of the nominal " + elements + ", got " + some + ".");
        }
        double[] rest = Arrays.stream(kept).mapToDouble(i -> middle[i]).toArray();
        if (!(Arrays.stream(rest).sum() > 0)) {
            throw new CompositionException(CompositionException.Kind.TOO_FEW_ELEMENTS,
                "Expected elements with a share in the nominal, got " + some + " of " + elements + ".");
        }
        boolean[] restDerived = new boolean[kept.length];
        for (int i = 0; i < kept.length; i++) {
            restDerived[i] = derived[kept[i]];
        }
        double[] restMiddle = Closure.close(rest);
        return new NominalFractions(List.copyOf(some), restDerived,
            rows(atLow, kept, restMiddle), rows(atHigh, kept, restMiddle), rows(atToleranceLow, kept, restMiddle),
            rows(atToleranceHigh, kept, restMiddle), restMiddle);
    }

    private static double[][] rows(double[][] compositions, int[] kept, double[] restMiddle) {
        double[] ones = new double[kept.length];
        Arrays.fill(ones, 1);
        return Arrays.stream(kept)
            .mapToObj(i -> Arrays.stream(kept).mapToDouble(j -> compositions[i][j]).toArray())
            .map(rest -> closeOr(restMiddle, rest, ones))
            .toArray(double[][]::new);
    }

    /**
     * Refuses a nominal that leaves nothing to compare: with one element, or with one element making up all of it,
     * a closed spot says the same whatever was measured.
     */
    public NominalFractions requireComparable() {
        for (int i = 0; i < size(); i++) {
            if (low(i) >= 1 - ROUNDING) {
                throw new CompositionException(CompositionException.Kind.TOO_FEW_ELEMENTS,
                    "Expected at least two elements with a share in the nominal, got only " + elements.get(i)
                        + "; after closing to 100 % there is nothing to compare.");
            }
        }
        return this;
    }

    public List<Element> elements() {
        return elements;
    }

    public int size() {
        return elements.size();
    }

    /** Lower limit of element {@code i} as an atomic fraction; equal to {@link #high} for a point. */
    public double low(int i) {
        return atLow[i][i];
    }

    public double high(int i) {
        return atHigh[i][i];
    }

    /** Middle of the limits of element {@code i}: the value itself for a point. */
    public double middle(int i) {
        return (low(i) + high(i)) / 2;
    }

    /** The one composition with every element at its middle, closed; with ranges not exactly {@link #middle}. */
    public double[] middles() {
        return middle.clone();
    }

    public boolean isPoint(int i) {
        return low(i) == high(i);
    }

    /** True where the limits were derived as the balance of the others. */
    public boolean isDerived(int i) {
        return derived[i];
    }

    /** Standard uncertainty of the nominal itself, from its tolerance, as an atomic fraction. */
    public double standardUncertainty(int i) {
        return elements.size() == 2 ? Math.max(own(0), own(1)) : own(i);
    }

    private double own(int i) {
        return (atToleranceHigh[i][i] - atToleranceLow[i][i]) / 2 / Math.sqrt(3);
    }
}
