package surfeit.statistics;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Student's t quantile of one probability for any degrees of freedom from 1 on, where many are needed.
 *
 * <pre>    ln t(ν) = Σ c_j T_j(2x - 1),   x = 1/ν in 0..1</pre>
 *
 * T_j Chebyshev polynomials, c_j from the quantiles at 32 Chebyshev points. The curve is smooth up to the normal
 * quantile at x = 0: within 1e-10 relative of {@link StudentT#quantile} for probabilities 0.6 to 0.999999. Up to 64
 * curves are kept. Immutable, thread-safe.
 */
final class QuantileCurve {

    private static final int TERMS = 32;
    private static final int KEPT = 64;
    private static final Map<Double, QuantileCurve> BY_PROBABILITY = new ConcurrentHashMap<>();

    private final double[] coefficients;

    private QuantileCurve(double probability) {
        double[] values = new double[TERMS];
        for (int k = 0; k < TERMS; k++) {
            double x = (Math.cos(angle(k)) + 1) / 2;
            values[k] = Math.log(StudentT.quantile(probability, 1 / x));
        }
        coefficients = new double[TERMS];
        for (int j = 0; j < TERMS; j++) {
            for (int k = 0; k < TERMS; k++) {
                coefficients[j] += values[k] * Math.cos(j * angle(k)) * (j == 0 ? 1.0 : 2.0) / TERMS;
            }
        }
    }

    private static double angle(int k) {
        return Math.PI * (k + 0.5) / TERMS;
    }

    /** @param probability above 0.5 and below 1 */
    static QuantileCurve of(double probability) {
        if (!(probability > 0.5 && probability < 1)) {
            throw new IllegalArgumentException("Probability is " + probability + ", must lie between 0.5 and 1.");
        }
        if (BY_PROBABILITY.size() >= KEPT && !BY_PROBABILITY.containsKey(probability)) {
            return new QuantileCurve(probability);
        }
        return BY_PROBABILITY.computeIfAbsent(probability, QuantileCurve::new);
    }

    /** The t below which the probability lies; {@code df} from 1 on, also infinite. */
    double at(double df) {
        double y = 2 / df - 1;
        double next = 0;
        double afterNext = 0;
        for (int j = TERMS - 1; j > 0; j--) {
            double own = coefficients[j] + 2 * y * next - afterNext;
            afterNext = next;
            next = own;
        }
        return Math.exp(coefficients[0] + y * next - afterNext);
    }
}
