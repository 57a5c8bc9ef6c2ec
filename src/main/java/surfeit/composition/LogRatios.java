package surfeit.composition;

import java.util.Arrays;

/**
 * Compositions as log-ratios, in which distances and means of closed data make sense.
 *
 * <pre>
 *     ilr_i = sqrt(i/(i+1)) ( mean of ln x_1..x_i  -  ln x_(i+1) )
 * </pre>
 * x parts above zero in any unit; the results do not change when all parts are multiplied by one number. The ilr
 * basis is the sequential (Gram-Schmidt) one; others differ by a rotation, which no distance and no T² sees.
 * Sources: Aitchison, The Statistical Analysis of Compositional Data (1986); Egozcue et al., Math. Geol. 35 (2003)
 * 279; both from memory.
 */
public final class LogRatios {
    private LogRatios() {
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

    private static double[] logs(double[] parts) {
        for (double part : parts) {
            if (!(part > 0) || Double.isInfinite(part)) {
                throw new CompositionException(CompositionException.Kind.VALUE_OUT_OF_RANGE,
                    "A log-ratio needs parts above 0, got " + part + "; replace zeros first.");
            }
        }
        return Arrays.stream(parts).map(Math::log).toArray();
    }
}
