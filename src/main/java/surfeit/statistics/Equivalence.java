package surfeit.statistics;

/**
 * Shows that an estimate lies inside given limits, instead of concluding so from a difference not found.
 *
 * <p>Two one-sided tests: the estimate must lie surely above the lower and surely below the upper limit; p is the
 * larger of the two p values. {@code p ≤ 0.05} says the same as "the 90 % interval lies inside the limits".
 * Source: Schuirmann, J. Pharmacokin. Biopharm. 15 (1987) 657; Berger and Hsu, Statist. Sci. 11 (1996) 283 (from
 * memory).
 */
public final class Equivalence {

    private Equivalence() {
    }

    /**
     * p of "the true value lies outside the limits", from the distances to them, both positive inside.
     *
     * @param aboveLower estimate minus lower limit; infinite where there is no lower limit
     * @param belowUpper upper limit minus estimate; infinite where there is no upper limit
     * @param u          the shared standard uncertainty, see {@link CombinedError}
     */
    public static double pValue(double aboveLower, double belowUpper, double s, double df, double u) {
        return Math.max(CombinedError.oneSidedP(aboveLower, s, df, u), CombinedError.oneSidedP(belowUpper, s, df, u));
    }

    /** p of "the true value lies further than {@code margin} from 0 on either side". */
    public static double withinMargin(double estimate, double margin, RandomPart random, double u) {
        return pValue(estimate + margin, margin - estimate, random.standardError(), random.degreesOfFreedom(), u);
    }
}
