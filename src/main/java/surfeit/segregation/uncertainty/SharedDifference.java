package surfeit.segregation.uncertainty;

/**
 * The calibration error of a difference of two groups: what of both errors is common cancels.
 *
 * <pre>
 *     u^2 = sum_j [ (a_j e_jA)^2 + (b_j e_jB)^2 - 2 rho a_j b_j e_jA e_jB ]
 * </pre>
 * a, b sensitivities of the two closed fractions (or their logits), e each group's own error, rho their correlation.
 *
 * @param errorA e of every part of group A at its mean, as atomic fractions
 * @param floorA additive share of the closed fractions of group A
 */
public record SharedDifference(double[] meanA, double[] meanB, double[] errorA, double[] errorB, double[] floorA,
                               double[] floorB, double correlation) {

    public static SharedDifference of(double[] meanA, CalibrationError a, double[] meanB, CalibrationError b,
                                      double correlation) {
        return new SharedDifference(meanA, meanB, a.errors(meanA), b.errors(meanB), a.closedFloor(meanA),
            b.closedFloor(meanB), correlation);
    }

    /** Standard uncertainty of {@code (mean A) / qA - (mean B) / qB} of one element. */
    public double uncertainty(int element, double qA, double qB) {
        double sum = 0;
        for (int j = 0; j < meanA.length; j++) {
            double a = (j == element ? 1 - meanA[element] : -meanA[element]) * errorA[j] / qA;
            double b = (j == element ? 1 - meanB[element] : -meanB[element]) * errorB[j] / qB;
            sum += a * a + b * b - 2 * correlation * a * b;
        }
        return Math.sqrt(Math.max(sum, 0));
    }
}
