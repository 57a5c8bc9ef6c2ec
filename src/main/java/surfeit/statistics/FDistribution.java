package surfeit.statistics;

import org.apache.commons.math3.special.Beta;

/** Probabilities of Fisher's F distribution, the ratio of two mean squares. Thread-safe. */
public final class FDistribution {

    private FDistribution() {
    }

    /**
     * P(F > f): the p value of an analysis of variance, {@code I_x(d2/2, d1/2)} with {@code x = d2/(d2 + d1 f)}
     * (NIST Digital Library of Mathematical Functions, 8.17).
     *
     * @param d1 degrees of freedom of the numerator
     * @param d2 degrees of freedom of the denominator
     */
    public static double survival(double f, double d1, double d2) {
        if (!(f >= 0 && d1 > 0 && d2 > 0)) {
            throw new IllegalArgumentException("F is " + f + " with " + d1 + " and " + d2
                + " degrees of freedom; F must be 0 or above, the degrees of freedom above 0.");
        }
        return Beta.regularizedBeta(d2 / (d2 + d1 * f), d2 / 2, d1 / 2);
    }
}
