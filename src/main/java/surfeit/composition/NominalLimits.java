package surfeit.composition;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * A nominal in its own basis as numbers: per element the low and high limit, and one middle composition.
 *
 * <p>The balance runs from one less the others' high limits to one less their low ones. The middle composition adds
 * up to one: elements with one value keep it and those with a range lie at its middle, scaled together where that
 * misses one; where no element has a range, all are scaled. Two elements are one number after closing: each then has
 * only what its own range and that of the other leave.
 */
record NominalLimits(double[] low, double[] high, double[] middle) {

    static NominalLimits of(List<NominalPart> parts) {
        double[] low = parts.stream().mapToDouble(NominalLimits::low).toArray();
        double[] high = parts.stream().mapToDouble(NominalLimits::high).toArray();
        double lows = DoubleStream.of(low).sum();
        double highs = DoubleStream.of(high).sum();
        for (int i = 0; i < low.length; i++) {
            if (parts.get(i) instanceof NominalPart.Balance) {
                low[i] = Math.max(1 - highs, 0);
                high[i] = Math.max(1 - lows, 0);
            }
        }
        if (low.length == 2) {
            keepCommon(low, high);
        }
        return new NominalLimits(low, high, middle(low, high));
    }

    /** Narrows two ranges to what lies in both; two points, and ranges that share nothing, stay as they are. */
    private static void keepCommon(double[] low, double[] high) {
        double from = Math.max(low[0], 1 - high[1]);
        double to = Math.min(high[0], 1 - low[1]);
        if (from > to || low[0] == high[0] && low[1] == high[1]) {
            return;
        }
        low[0] = from;
        high[0] = to;
        low[1] = 1 - to;
        high[1] = 1 - from;
    }

    /** Low limit of one part; zero for the balance, which its neighbours set. */
    static double low(NominalPart part) {
        return part instanceof NominalPart.Point point ? point.value()
            : part instanceof NominalPart.Range range ? range.low() : 0;
    }

    /** High limit of one part; zero for the balance, which its neighbours set. */
    static double high(NominalPart part) {
        return part instanceof NominalPart.Point point ? point.value()
            : part instanceof NominalPart.Range range ? range.high() : 0;
    }

    private static double[] middle(double[] low, double[] high) {
        double[] middle = new double[low.length];
        double single = 0;
        double ranged = 0;
        for (int i = 0; i < middle.length; i++) {
            middle[i] = (low[i] + high[i]) / 2;
            single += low[i] == high[i] ? middle[i] : 0;
            ranged += low[i] == high[i] ? 0 : middle[i];
        }
        if (ranged > 0 && single < 1) {
            double scale = (1 - single) / ranged;
            for (int i = 0; i < middle.length; i++) {
                middle[i] *= low[i] == high[i] ? 1 : scale;
            }
        }
        return Closure.close(middle);
    }

    /** The middle composition with one element at another value and the rest scaled to make room for it. */
    double[] middleWith(int index, double value) {
        double others = 1 - middle[index];
        double[] moved = Arrays.copyOf(middle, middle.length);
        for (int j = 0; j < moved.length; j++) {
            moved[j] = j == index ? value : middle[j] * (others > 0 ? (1 - value) / others : 0);
        }
        return moved;
    }
}
