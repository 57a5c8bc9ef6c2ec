package surfeit.segregation;

import java.util.Optional;

/**
 * How large the calibration error of a group's numbers is: relative part, additive floor, and reference spots if they
 * were corrected with any.
 *
 * @param relative  r0, relative standard uncertainty of the accuracy class
 * @param floor     additive part
 * @param reference the correction that went into the numbers
 */
record CalibrationError(double relative, AdditiveFloor floor, Optional<ReferenceCorrection> reference) {

    /** Standard uncertainty e_j of every part before closing, as an atomic fraction: {@code hypot(r0 C_j, f_j)}. */
    double[] errors(double[] mean) {
        double[] f = floors(mean);
        double[] errors = new double[mean.length];
        for (int j = 0; j < errors.length; j++) {
            double error = Math.hypot(relative * mean[j], f[j]);
            int element = j;
            errors[j] = reference.map(correction -> correction.reducedError(error, mean[element], element, relative))
                .orElse(error);
        }
        return errors;
    }

    /** F_j, the additive share of the closed fractions alone. */
    double[] closedFloor(double[] mean) {
        return SharedError.at(mean, mean, relative, floor, Optional.empty()).floor();
    }

    private double[] floors(double[] mean) {
        return relative > 0 ? floor.at(mean) : new double[mean.length];
    }

    CalibrationError without(int element) {
        return new CalibrationError(relative, floor.without(element),
            reference.map(correction -> correction.without(element)));
    }
}
