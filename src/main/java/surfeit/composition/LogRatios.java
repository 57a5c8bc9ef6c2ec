package surfeit.composition;

import java.util.Arrays;

/**
 * Compositions as log-ratios, in which distances and means of closed data make sense.
 *
 * <pre>
 *     clr_i = ln x_i - mean_j ln x_j,     ilr_i = sqrt(i/(i+1)) ( mean of ln x_1..x_i  -  ln x_(i+1) )
 * </pre>
 * x parts above zero in any unit; the results do not change when all parts are multiplied by one number. The ilr
 * basis is the sequential (Gram-Schmidt) one; others differ by a rotation, which no distance and no T² sees.
 * One part that falls makes clr raise all others: not for saying which element changed.
 * Sources: Aitchison, The Statistical Analysis of Compositional Data (1986); Egozcue et al., Math. Geol. 35 (2003)
 * 279; zero replacement: Martin-Fernandez et al., Math. Geol. 35 (2003) 253; all from memory.
 */
public final class LogRatios {
    private LogRatios() {
    }

    /** Centred log-ratios; they add up to zero. */
    public static double[] clr(double[] parts) {
        double[] logs = logs(parts);
        double mean = Arrays.stream(logs).sum() / logs.length;
        return Arrays.stream(logs).map(log -> log - mean).toArray();
    }

    /** The closed composition with these centred log-ratios. */
    public static double[] clrInverse(double[] clr) {
        double largest = Arrays.stream(clr).max().orElse(0);
        return Closure.close(Arrays.stream(clr).map(value -> Math.exp(value - largest)).toArray());
    }

    /** Isometric log-ratios, one fewer than parts. */
    public static double[] ilr(double[] parts) {
        double[] logs = logs(parts);
        double[] ilr = new double[Math.max(parts.length - 1, 0)];
        double sum = 0;
        for (int i = 1; i < logs.length; i++) {
            sum += logs[i - 1];
            ilr[i - 1] = Math.sqrt(i / (i + 1.0)) * (sum / i - logs[i]);
        }
        return ilr;
    }

    /** The closed composition with these isometric log-ratios. */
    public static double[] ilrInverse(double[] ilr) {
        double[] clr = new double[ilr.length + 1];
        for (int i = 1; i <= ilr.length; i++) {
            double step = Math.sqrt(i / (i + 1.0)) * ilr[i - 1];
            for (int j = 0; j < i; j++) {
                clr[j] += step / i;
            }
            clr[i] -= step;
        }
        return clrInverse(clr);
    }

    /** What turns the second composition into the first, part by part, closed: {@code x_i / y_i}. */
    public static double[] perturbationDifference(double[] parts, double[] other) {
        double[] ratios = logs(parts);
        double[] others = logs(other);
        requireSameSize(ratios, others);
        for (int i = 0; i < ratios.length; i++) {
            ratios[i] -= others[i];
        }
        return clrInverse(ratios);
    }

    /** Aitchison distance: length of the difference of the centred log-ratios. */
    public static double distance(double[] parts, double[] other) {
        double[] first = clr(parts);
        double[] second = clr(other);
        requireSameSize(first, second);
        double squares = 0;
        for (int i = 0; i < first.length; i++) {
            squares += (first[i] - second[i]) * (first[i] - second[i]);
        }
        return Math.sqrt(squares);
    }

    /**
     * The closed composition with every zero replaced by a small fraction and the rest scaled to make room:
     * zero becomes delta, every other part {@code x_i (1 - sum of deltas)}. The ratios among the rest stay.
     *
     * @param delta fraction put in place of a zero, usually 0.65 of the detection limit
     */
    public static double[] replaceZeros(double[] parts, double delta) {
        double[] closed = Closure.close(parts);
        long zeros = Arrays.stream(closed).filter(part -> part == 0).count();
        double rest = 1 - zeros * delta;
        if (!(delta > 0) || !(rest > 0)) {
            throw new CompositionException(CompositionException.Kind.VALUE_OUT_OF_RANGE, "The fraction put in place of "
                + zeros + " zeros lies above 0 and leaves room for the rest, got " + delta + ".");
        }
        return Arrays.stream(closed).map(part -> part == 0 ? delta : part * rest).toArray();
    }

    private static double[] logs(double[] parts) {
        for (double part : parts) {
            if (!(part > 0) || Double.isInfinite(part)) {
                throw new CompositionException(CompositionException.Kind.VALUE_OUT_OF_RANGE,
                    "A log-ratio needs parts above 0, got " + part + "; replace zeros first.");
            }
        }
        return Arrays.stream(parts).map(Math::log).toArray();
    }

    private static void requireSameSize(double[] expected, double[] got) {
        if (expected.length != got.length) {
            throw new IllegalArgumentException("Expected compositions of equally many parts, got "
                + expected.length + " and " + got.length + ".");
        }
    }
}
