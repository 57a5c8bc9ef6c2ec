package surfeit.statistics;

/**
 * Interval of a fraction measured by few counts, where "value ± z sigma" would reach below 0 or be far too short.
 *
 * <p>Of {@code T} net counts a share C belongs to the element; B_x and B_r are the background counts under its peak
 * and under the others', paired. The limits p solve
 *
 * <pre>    (C - p)² = z² ( p(1-p)/T + q ),    q = ((1-C)² 2B_x + C² 2B_r)/T²</pre>
 *
 * which is Wilson's interval when there is no background. The background part q is taken at the measured C. A limit
 * can lie a little below 0 where the background outweighs the peak.
 * Source of the form without background: Wilson, J. Amer. Statist. Assoc. 22 (1927) 209 (from memory).
 */
public record ScoreInterval(double low, double high) {

    public ScoreInterval {
        if (!(low <= high)) {
            throw new IllegalArgumentException("Interval ends are " + low + " and " + high + ", expected low ≤ high.");
        }
    }

    /**
     * @param fraction             C, the element's share of the net counts, 0..1
     * @param netTotal             T, the net counts of all elements
     * @param background           B_x, background counts under the element's peak
     * @param backgroundOfTheOthers B_r, background counts under the other peaks
     * @param confidence           0.95, say
     */
    public static ScoreInterval of(double fraction, double netTotal, double background, double backgroundOfTheOthers,
                                   double confidence) {
        if (!(fraction >= 0 && fraction <= 1 && netTotal > 0 && background >= 0 && backgroundOfTheOthers >= 0)) {
            throw new IllegalArgumentException("Fraction " + fraction + " must lie in 0 to 1, net counts " + netTotal
                + " above 0, background counts " + background + " and " + backgroundOfTheOthers + " at 0 or above.");
        }
        double z = NormalDistribution.quantile((1 + confidence) / 2);
        double rest = 1 - fraction;
        double q = 2 * (rest * rest * background + fraction * fraction * backgroundOfTheOthers) / (netTotal * netTotal);
        double perCount = z * z / netTotal;
        double middle = (fraction + perCount / 2) / (1 + perCount);
        double product = (fraction * fraction - z * z * q) / (1 + perCount);
        double half = Math.sqrt(middle * middle - product);
        return new ScoreInterval(middle - half, middle + half);
    }
}
