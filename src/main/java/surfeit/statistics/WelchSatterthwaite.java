package surfeit.statistics;

import java.util.List;

/**
 * Adds independent errors and says how many degrees of freedom their sum has.
 *
 * <pre>    s² = Σ sᵢ²      ν = s⁴ / Σ (sᵢ⁴/νᵢ)</pre>
 *
 * sᵢ standard errors (sensitivities already applied), νᵢ their degrees of freedom; a known error (νᵢ infinite) adds
 * nothing to the lower sum. Infinite where every error is known or zero. An approximation: with νᵢ of 1 or 2
 * beside a known error it makes intervals too short ({@link CombinedError} guards against that).
 * Source: Satterthwaite, Biometrics Bull. 2 (1946) 110; Welch, Biometrika 34 (1947) 28; JCGM 100:2008, G.4 (from
 * memory).
 */
public final class WelchSatterthwaite {

    private WelchSatterthwaite() {
    }

    /** The sum of two independent errors. */
    public static RandomPart sum(RandomPart a, RandomPart b) {
        return sum(List.of(a, b));
    }

    /** The sum of independent errors; that of none is a known 0. */
    public static RandomPart sum(List<RandomPart> parts) {
        double total = Math.sqrt(parts.stream().mapToDouble(p -> p.standardError() * p.standardError()).sum());
        if (total == 0) {
            return RandomPart.known(0);
        }
        double lower = 0;
        for (RandomPart part : parts) {
            double share = part.standardError() / total;
            lower += share * share * share * share / part.degreesOfFreedom();
        }
        return new RandomPart(total, lower > 0 ? 1 / lower : Double.POSITIVE_INFINITY);
    }
}
