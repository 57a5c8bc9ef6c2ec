package surfeit.segregation;

import java.util.Optional;

/**
 * The calibration error shared by all spots of a run, as standard uncertainties of one group mean.
 *
 * <pre>
 *     r_j = hypot(r0, f_j / C_j)                 e_j = hypot(r0 C_j, f_j)
 *     logit:   u_i^2 = r_i^2 + sum_{j != i} (C_j / (1 - C_i))^2 r_j^2
 *     linear:  u_i^2 = (1 - C_i)^2 e_i^2 + C_i^2 sum_{j != i} e_j^2
 *     floor:   F_i^2 = (1 - C_i)^2 f_i^2 + C_i^2 sum_{j != i} f_j^2
 * </pre>
 * C the group mean (atomic fractions), r0 the relative standard uncertainty of the accuracy class, f the additive
 * floor. For use inside the hull the logit form takes f_j / max(C_j, nominal_j), so that it does not grow without
 * bound as an element vanishes. Errors of different elements are taken as independent; geometry is in none of these.
 * With reference spots r_j becomes {@code r_j^2 + rr_j^2 - 2 rho r_j rr_j + cert_j^2} for the elements they cover.
 * With r0 = 0 (pure random analysis) the floor is 0 too.
 *
 * @param logit     u on the logit scale; NaN where the mean is not inside 0..1
 * @param logitHull the same for use inside the hull
 * @param linear    u as an atomic fraction
 * @param floor     F, the additive share alone, as an atomic fraction
 */
record SharedError(double[] logit, double[] logitHull, double[] linear, double[] floor) {

    /** The shared error at a group mean; {@code middle} is the nominal (the middle of a range). */
    static SharedError at(double[] mean, double[] middle, double relative, AdditiveFloor rule,
                          Optional<ReferenceCorrection> reference) {
        int n = mean.length;
        double[] f = relative > 0 ? rule.at(mean) : new double[n];
        double[] e = new double[n];
        double[] eHull = new double[n];
        for (int j = 0; j < n; j++) {
            e[j] = reduced(Math.hypot(relative * mean[j], f[j]), mean[j], j, relative, reference);
            double size = Math.max(Math.abs(mean[j]), middle[j]);
            double atSize = reduced(Math.hypot(relative * size, f[j]), size, j, relative, reference);
            eHull[j] = size > 0 ? Math.abs(mean[j]) * atSize / size : 0;
        }
        double[] linear = new double[n];
        double[] logit = new double[n];
        double[] logitHull = new double[n];
        double[] floor = new double[n];
        for (int i = 0; i < n; i++) {
            double q = mean[i] * (1 - mean[i]);
            linear[i] = closed(e, mean[i], i);
            floor[i] = closed(f, mean[i], i);
            boolean inside = mean[i] > 0 && mean[i] < 1;
            logit[i] = inside ? linear[i] / q : Double.NaN;
            logitHull[i] = inside ? closed(eHull, mean[i], i) / q : Double.NaN;
        }
        return new SharedError(logit, logitHull, linear, floor);
    }

    private static double reduced(double error, double fraction, int element, double relative,
                                  Optional<ReferenceCorrection> reference) {
        return reference.isPresent() ? reference.get().reducedError(error, fraction, element, relative) : error;
    }

    private static double closed(double[] errors, double c, int i) {
        double others = 0;
        for (int j = 0; j < errors.length; j++) {
            others += j == i ? 0 : errors[j] * errors[j];
        }
        double own = (1 - c) * errors[i];
        return Math.sqrt(own * own + c * c * others);
    }
}
