package surfeit.segregation.uncertainty;

import java.util.Optional;

/**
 * What reference spots on a piece of known composition, measured in the same run, do to a group.
 *
 * <pre>
 *     usable:  C^r_j > 0, R_j > 0 and R_j >= 5 se(R_j)          gain:  g_j = C^r_j / R_j   (else 1)
 *     residual shared error:  e*_j^2 = e_j^2 + er_j^2 - 2 rho e_j er_j + (C_j cert_j)^2
 * </pre>
 * R_j mean measured fraction of the reference spots, C^r_j its true fraction, both closed over the usable elements for
 * the gain; rho correlation of the shared error between sample and piece; cert_j relative standard uncertainty of the
 * certified value; er_j = C_j rr_j with rr_j the relative error at the reference mean. Every spot's fractions are
 * multiplied by g and closed again. Settled by simulation on invented data: three reference spots suffice, five are
 * advised; a rho believed too high is the largest risk (coverage 85 to 90 % at 0.8 taken as 0.9).
 */
public record ReferenceCorrection(double[] mean, double[] trueFractions, double[] certificate, boolean[] usable,
                                  double[] gain, double correlation, AdditiveFloor floor, boolean sameMaterial,
                                  double[][] spots, Optional<double[][]> spotUncertainties) {

    /** The correction, or empty where fewer than two elements are usable. */
    public static Optional<ReferenceCorrection> of(double[][] spots, Optional<double[][]> spotUncertainties,
                                                   double[] trueFractions, double[] certificate, double correlation,
                                                   AdditiveFloor floor, boolean sameMaterial) {
        int n = trueFractions.length;
        double[] mean = new double[n];
        for (double[] spot : spots) {
            for (int j = 0; j < n; j++) {
                mean[j] += spot[j] / spots.length;
            }
        }
        boolean[] usable = new boolean[n];
        int count = 0;
        double sumMean = 0;
        double sumTrue = 0;
        for (int j = 0; j < n; j++) {
            usable[j] = trueFractions[j] > 0 && mean[j] > 0 && mean[j] >= 5 * standardError(spots, mean[j], j);
            if (usable[j]) {
                count++;
                sumMean += mean[j];
                sumTrue += trueFractions[j];
            }
        }
        if (count < 2) {
            return Optional.empty();
        }
        double[] gain = new double[n];
        for (int j = 0; j < n; j++) {
            gain[j] = usable[j] ? trueFractions[j] / sumTrue / (mean[j] / sumMean) : 1;
        }
        double[] cert = sameMaterial ? new double[n] : certificate;
        return Optional.of(new ReferenceCorrection(mean, trueFractions, cert, usable, gain, correlation, floor,
            sameMaterial, spots, spotUncertainties));
    }

    private static double standardError(double[][] spots, double mean, int element) {
        if (spots.length < 2) {
            return 0;
        }
        double sum = 0;
        for (double[] spot : spots) {
            sum += (spot[element] - mean) * (spot[element] - mean);
        }
        return Math.sqrt(sum / (spots.length - 1) / spots.length);
    }

    /** The same correction without one element; the gains stay, all fractions are closed again. */
    public ReferenceCorrection without(int element) {
        double[][] closed = new double[spots.length][];
        for (int q = 0; q < spots.length; q++) {
            closed[q] = rest(spots[q], element);
        }
        boolean[] stillUsable = new boolean[usable.length - 1];
        for (int j = 0; j < stillUsable.length; j++) {
            stillUsable[j] = usable[j < element ? j : j + 1];
        }
        Optional<double[][]> uncertainties = spotUncertainties.map(all -> {
            double[][] reduced = new double[all.length][];
            for (int q = 0; q < all.length; q++) {
                reduced[q] = GroupSums.drop(all[q], element);
            }
            return reduced;
        });
        return new ReferenceCorrection(rest(mean, element), rest(trueFractions, element),
            GroupSums.drop(certificate, element), stillUsable, GroupSums.drop(gain, element), correlation,
            floor.without(element), sameMaterial, closed, uncertainties);
    }

    private static double[] rest(double[] fractions, int element) {
        double[] rest = GroupSums.drop(fractions, element);
        double sum = 0;
        for (double part : rest) {
            sum += part;
        }
        for (int j = 0; j < rest.length; j++) {
            rest[j] = sum > 0 ? rest[j] / sum : 0;
        }
        return rest;
    }

    /** What the gain and closing again multiply one fraction of a spot by, also where that fraction is zero. */
    public double scale(double[] fractions, int element) {
        double sum = 0;
        for (int j = 0; j < fractions.length; j++) {
            sum += fractions[j] * gain[j];
        }
        return gain[element] / sum;
    }

    public int spotCount() {
        return spots.length;
    }

    /** rr_j, the relative calibration error of every element at the mean of the reference spots. */
    double[] relativeErrors(double relative) {
        double[] f = new double[mean.length];
        if (relative > 0) {
            floor.at(mean, f);
        }
        double[] errors = new double[mean.length];
        for (int j = 0; j < errors.length; j++) {
            errors[j] = Math.hypot(relative, f[j] / Math.max(mean[j], 1e-12));
        }
        return errors;
    }

    /**
     * Residual of an absolute error {@code error} of a fraction once the reference is used; unchanged where unusable.
     *
     * @param relative rr_j of the element
     */
    double reducedError(double error, double fraction, int element, double relative) {
        if (!usable[element]) {
            return error;
        }
        double own = fraction * relative;
        double cert = fraction * certificate[element];
        return Math.sqrt(Math.max(error * error + own * own - 2 * correlation * error * own, 0) + cert * cert);
    }

    /** The fractions of one spot after the gain, closed again. */
    public double[] corrected(double[] fractions) {
        double[] result = new double[fractions.length];
        correct(fractions, result);
        return result;
    }

    /** The same, filled in. */
    public void correct(double[] fractions, double[] result) {
        double sum = 0;
        for (int j = 0; j < result.length; j++) {
            result[j] = fractions[j] * gain[j];
            sum += result[j];
        }
        for (int j = 0; j < result.length; j++) {
            result[j] /= sum;
        }
    }
}
