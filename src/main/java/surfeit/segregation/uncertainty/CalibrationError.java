package surfeit.segregation.uncertainty;

import java.util.Optional;

/**
 * How large the calibration error of a group's numbers is: relative part, additive floor, and reference spots if they
 * were corrected with any.
 *
 * @param relative  r0, relative standard uncertainty of the accuracy class
 * @param floor     additive part
 * @param reference the correction that went into the numbers
 */
public record CalibrationError(double relative, AdditiveFloor floor, Optional<ReferenceCorrection> reference) {

    /** Standard uncertainty e_j of every part before closing, as an atomic fraction: {@code hypot(r0 C_j, f_j)}. */
    public double[] errors(double[] mean) {
        return new SharedError(mean, this).at(mean).errors();
    }

    /** F_j, the additive share of the closed fractions alone. */
    double[] closedFloor(double[] mean) {
        SharedError shared = new SharedError(mean, new CalibrationError(relative, floor, Optional.empty())).at(mean);
        double[] closed = new double[mean.length];
        for (int i = 0; i < closed.length; i++) {
            closed[i] = shared.floor(i);
        }
        return closed;
    }

    public CalibrationError without(int element) {
        return new CalibrationError(relative, floor.without(element),
            reference.map(correction -> correction.without(element)));
    }
}
