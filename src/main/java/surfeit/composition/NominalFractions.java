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
        double[][] limits = nominal.limits();
        double[] middles = new double[parts.size()];
        boolean[] derived = new boolean[parts.size()];
        double[] tolerances = new double[parts.size()];
        for (int i = 0; i < middles.length; i++) {
            middles[i] = (limits[0][i] + limits[1][i]) / 2;
            derived[i] = parts.get(i) instanceof NominalPart.Balance;
            tolerances[i] = parts.get(i) instanceof NominalPart.Point point ? point.tolerance() : 0;
        }
        double[] closed = Closure.close(middles);
        double[] divisors = Closure.divisors(elements, nominal.basis(), Basis.ATOMIC);
        int n = middles.length;
        double[][] low = new double[n][];
        double[][] high = new double[n][];
        double[][] toleranceLow = new double[n][];
        double[][] toleranceHigh = new double[n][];
        for (int i = 0; i < n; i++) {
            boolean point = limits[0][i] == limits[1][i];
            low[i] = point ? Closure.close(closed, divisors) : shifted(middles, i, limits[0][i], divisors);
            high[i] = point ? low[i] : shifted(middles, i, limits[1][i], divisors);
            toleranceLow[i] = tolerances[i] == 0 ? low[i] : shifted(closed, i, Math.max(closed[i] - tolerances[i], 0), divisors);
            toleranceHigh[i] = tolerances[i] == 0 ? low[i] : shifted(closed, i, Math.min(closed[i] + tolerances[i], 1), divisors);
        }
        return new NominalFractions(elements, derived, low, high, toleranceLow, toleranceHigh, Closure.close(closed, divisors));
    }

    private static double[] shifted(double[] middles, int index, double value, double[] divisors) {
        double others = 0;
        for (int j = 0; j < middles.length; j++) {
            others += j == index ? 0 : middles[j];
        }
        double[] shifted = new double[middles.length];
        for (int j = 0; j < middles.length; j++) {
            shifted[j] = j == index ? value : others == 0 ? 0 : middles[j] * (1 - value) / others;
        }
        return Closure.close(shifted, divisors);
    }

    /** The nominal without some elements, closed again over the rest; they are dropped from data and nominal alike. */
    public NominalFractions without(Set<Element> dropped) {
        int[] kept = IntStream.range(0, elements.size())
            .filter(i -> !dropped.contains(elements.get(i))).toArray();
        if (kept.length == elements.size()) {
            return this;
        }
        List<Element> rest = Arrays.stream(kept).mapToObj(elements::get).toList();
        if (rest.isEmpty()) {
            throw new CompositionException(CompositionException.Kind.TOO_FEW_ELEMENTS,
                "No element of the nominal is left after leaving out " + dropped + ".");
        }
        boolean[] restDerived = new boolean[kept.length];
        for (int i = 0; i < kept.length; i++) {
            restDerived[i] = derived[kept[i]];
        }
        return new NominalFractions(rest, restDerived, rows(atLow, kept), rows(atHigh, kept), rows(atToleranceLow, kept),
            rows(atToleranceHigh, kept), columns(middle, kept));
    }

    private static double[][] rows(double[][] compositions, int[] kept) {
        return Arrays.stream(kept).mapToObj(i -> columns(compositions[i], kept)).toArray(double[][]::new);
    }

    private static double[] columns(double[] composition, int[] kept) {
        return Closure.close(Arrays.stream(kept).mapToDouble(i -> composition[i]).toArray());
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

    /** Middle of the limits: the value itself for a point. */
    public double middle(int i) {
        return (low(i) + high(i)) / 2;
    }

    /** The composition with every element at its middle, closed. */
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
