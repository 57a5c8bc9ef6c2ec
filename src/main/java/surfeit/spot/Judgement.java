package surfeit.spot;

/**
 * The choices a lab may make in judging a sample; every answer echoes them.
 *
 * @param marginOddsRatio      odds ratio up to which a shift does not matter, both ways; above 1
 * @param alpha                risk of a false flag over all tests of one answer
 * @param uLevel               how many standard uncertainties a stated {@code u} of a spot means: 1, 2 or 3
 * @param referenceCorrelation correlation of the shared error between sample and reference piece, 0 to 1
 * @param spotCentre           how the spots of one particle are put together
 */
public record Judgement(double marginOddsRatio, double alpha, int uLevel, double referenceCorrelation,
                        SpotCentre spotCentre) {
    /**
     * Odds ratio 1.25 (convention of equivalence testing, from memory), alpha 0.05 (convention), one standard
     * uncertainty, correlation 0.9 (judgement: particle or rough surface against a polished piece), mean.
     */
    public static final Judgement DEFAULT = new Judgement(1.25, 0.05, 1, 0.9, SpotCentre.MEAN);

    /** One in a million: no count of spots supports a smaller risk. Judgement. */
    private static final double ALPHA_MIN = 1e-6;

    public Judgement {
        require(marginOddsRatio > 1 && marginOddsRatio <= 100, "margin_odds_ratio", "above 1 and at most 100", marginOddsRatio);
        require(alpha >= ALPHA_MIN && alpha < 0.5, "alpha", "at least 0.000001 and below 0.5", alpha);
        require(uLevel >= 1 && uLevel <= 3, "u_level", "1, 2 or 3", uLevel);
        require(referenceCorrelation >= 0 && referenceCorrelation <= 1, "reference_correlation", "0 to 1", referenceCorrelation);
    }

    private static void require(boolean holds, String what, String expected, double found) {
        if (!holds) {
            throw new IllegalArgumentException(what + " must be " + expected + ", got " + found + ".");
        }
    }
}
