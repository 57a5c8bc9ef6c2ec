package surfeit.rival;

/**
 * How a change of some parts of a closed composition moves the log odds of one of them.
 *
 * <p>Fractions and amounts are atomic: by mass, the odds of one part of three or more move otherwise, unless that part
 * alone gets more. Stateless.
 */
final class LogOdds {

    private LogOdds() {
    }

    static double of(double fraction) {
        return Math.log(fraction / (1 - fraction));
    }

    static double fraction(double logOdds) {
        return 1 / (1 + Math.exp(-logOdds));
    }

    /**
     * Change of the log odds of part i when every part is multiplied.
     *
     * <pre>   ln g_i - ln( sum_{j!=i} c_j g_j / sum_{j!=i} c_j ) </pre>
     */
    static double multiplied(double[] fractions, double[] multipliers, int i) {
        double before = 0;
        double after = 0;
        for (int j = 0; j < fractions.length; j++) {
            if (j != i) {
                before += fractions[j];
                after += fractions[j] * multipliers[j];
            }
        }
        return Math.log(multipliers[i] * before / after);
    }

    /** Change of the log odds of part i when part j alone is multiplied. */
    static double oneMultiplied(double[] fractions, int j, double multiplier, int i) {
        return i == j ? Math.log(multiplier) : -Math.log1p((multiplier - 1) * fractions[j] / (1 - fractions[i]));
    }

    /** Change of the log odds of part i when amounts are added to the parts; the fractions themselves add up to one. */
    static double added(double[] fractions, double[] amounts, int i) {
        double before = 0;
        double after = 0;
        for (int j = 0; j < fractions.length; j++) {
            if (j != i) {
                before += fractions[j];
                after += fractions[j] + amounts[j];
            }
        }
        return Math.log((fractions[i] + amounts[i]) / fractions[i]) - Math.log(after / before);
    }
}
