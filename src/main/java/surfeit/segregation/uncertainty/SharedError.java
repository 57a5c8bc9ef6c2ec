package surfeit.segregation.uncertainty;

import java.util.Optional;

/**
 * The calibration error shared by all spots of a run, as standard uncertainties of one mean composition.
 *
 * <pre>
 *     r_j = hypot(r0, f_j / C_j)                 e_j = hypot(r0 C_j, f_j)
 *     logit:   u_i^2 = r_i^2 + sum_{j != i} (C_j / (1 - C_i))^2 r_j^2
 *     linear:  u_i^2 = (1 - C_i)^2 e_i^2 + C_i^2 sum_{j != i} e_j^2
 *     floor:   F_i^2 = (1 - C_i)^2 f_i^2 + C_i^2 sum_{j != i} f_j^2
 * </pre>
 * C the mean (atomic fractions), r0 the relative standard uncertainty of the accuracy class, f the additive floor. For
 * use inside the hull the logit form takes f_j / max(C_j, nominal_j), so that it does not grow without bound as an
 * element vanishes. Errors of different elements are taken as independent; geometry is in none of these. With reference
 * spots e_j is what {@linkplain ReferenceCorrection they leave of it}. With r0 = 0 (pure random analysis) the floor is 0
 * too.
 *
 * <p>It is filled again for every mean, without making an object: one for each group or reader of spots. Not
 * thread-safe.
 */
public final class SharedError {
    private final double[] middle;
    private final double relative;
    private final AdditiveFloor rule;
    private final Optional<ReferenceCorrection> reference;
    /** rr_j of the reference spots, where there are any. */
    private final double[] ofReference;

    private double[] mean;
    private final double[] floors;
    private final double[] errors;
    private final double[] linear;
    private double floorsSquared;

    /** @param middle the nominal, or the middle of its range, as atomic fractions */
    public SharedError(double[] middle, CalibrationError calibration) {
        this.middle = middle;
        this.relative = calibration.relative();
        this.rule = calibration.floor();
        this.reference = calibration.reference();
        this.ofReference = reference.map(correction -> correction.relativeErrors(relative)).orElse(new double[0]);
        this.mean = middle;
        this.floors = new double[middle.length];
        this.errors = new double[middle.length];
        this.linear = new double[middle.length];
    }

    /** This, now at a mean, which must stay as it is as long as it is asked about. */
    public SharedError at(double[] mean) {
        this.mean = mean;
        if (relative > 0) {
            rule.at(mean, floors);
        }
        floorsSquared = 0;
        for (int j = 0; j < errors.length; j++) {
            floorsSquared += floors[j] * floors[j];
            errors[j] = error(j, mean[j]);
        }
        close(errors, mean, linear);
        return this;
    }

    /** e_j of the fraction C_j. */
    private double error(int j, double fraction) {
        double own = relative * fraction;
        double error = Math.sqrt(own * own + floors[j] * floors[j]);
        return reference.isPresent() ? reference.get().reducedError(error, fraction, j, ofReference[j]) : error;
    }

    /** u on the logit scale; NaN where the mean is not inside 0..1. */
    public double logit(int i) {
        return onLogit(linear(i), i);
    }

    /** The same for use inside the hull. */
    public double logitHull(int i) {
        double others = 0;
        double own = 0;
        for (int j = 0; j < mean.length; j++) {
            double size = Math.max(Math.abs(mean[j]), middle[j]);
            double error = size > 0 ? Math.abs(mean[j]) * error(j, size) / size : 0;
            own = j == i ? error : own;
            others += j == i ? 0 : error * error;
        }
        return onLogit(Math.sqrt(closedSquare(own, others, mean[i])), i);
    }

    private double onLogit(double linear, int i) {
        return mean[i] > 0 && mean[i] < 1 ? linear / (mean[i] * (1 - mean[i])) : Double.NaN;
    }

    /** u as an atomic fraction. */
    public double linear(int i) {
        return linear[i];
    }

    /** F, the additive share alone, as an atomic fraction. */
    public double floor(int i) {
        double others = 0;
        for (int j = 0; j < floors.length; j++) {
            others += j == i ? 0 : floors[j] * floors[j];
        }
        return Math.sqrt(closedSquare(floors[i], others, mean[i]));
    }

    /** Whether F of a mean inside 0..1 reaches this atomic fraction; it never exceeds the root of the sum of all f_j^2. */
    public boolean floorReaches(double fraction, int i) {
        return floorsSquared >= fraction * fraction && floor(i) >= fraction;
    }

    /** Standard uncertainties e_j of the parts before closing. */
    double[] errors() {
        return errors.clone();
    }

    /**
     * Fills in standard uncertainties of the closed fractions c, from those of all parts, which err independently. First
     * order: within 3 % up to relative standard uncertainties of 10 %, but 5 to 25 % too small at 25 % (simulation on
     * invented binaries). Source: JCGM 100:2008 (GUM) section 5.2, from memory.
     */
    public static void close(double[] errors, double[] c, double[] closed) {
        double before = 0;
        for (int i = 0; i < closed.length; i++) {
            closed[i] = before;
            before += errors[i] * errors[i];
        }
        double after = 0;
        for (int i = closed.length - 1; i >= 0; i--) {
            closed[i] = Math.sqrt(closedSquare(errors[i], closed[i] + after, c[i]));
            after += errors[i] * errors[i];
        }
    }

    private static double closedSquare(double error, double othersSquared, double c) {
        double own = (1 - c) * error;
        return own * own + c * c * othersSquared;
    }
}
