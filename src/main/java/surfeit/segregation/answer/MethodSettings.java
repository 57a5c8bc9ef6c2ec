package surfeit.segregation.answer;

import surfeit.spot.AccuracyClass;
import surfeit.spot.Judgement;

/**
 * Every number of the method that a lab can choose, in force for one answer and echoed in it.
 *
 * @param judgement             margin, alpha, level of stated uncertainties, reference correlation, spot centre
 * @param accuracy              accuracy class of the concentrations
 * @param floorMassFraction     additive part of the shared error, a mass fraction
 * @param detectionLimitMassFraction limit taken for "not detected" without a stated limit, a mass fraction
 */
public record MethodSettings(Judgement judgement, AccuracyClass accuracy, double floorMassFraction,
                             double detectionLimitMassFraction) {
    /** Name and version of the method, echoed in every answer; the version grows when the same data may get another answer. */
    public static final String NAME = "particle means on the logit scale";
    public static final int VERSION = 1;
    /** 0.1 mass %: what "about 0.1 wt%" as the detection limit of the technique reads as. Judgement. */
    public static final double DEFAULT_FLOOR_MASS_FRACTION = 0.001;
    /** 0.3 mass %, about three times the floor. Judgement; the setting {@code detection-limit-mass-percent}. */
    public static final double DEFAULT_DETECTION_LIMIT_MASS_FRACTION = 0.003;

    public MethodSettings {
        if (!(floorMassFraction >= 0 && floorMassFraction < 0.1)) {
            throw new IllegalArgumentException("The additive floor lies from 0 to below 10 mass %, got " + floorMassFraction * 100
                + " %.");
        }
        if (!(detectionLimitMassFraction > 0 && detectionLimitMassFraction < 0.1)) {
            throw new IllegalArgumentException(
                "The detection limit lies above 0 and below 10 mass %, got " + detectionLimitMassFraction * 100 + " %.");
        }
    }

    public static MethodSettings of(Judgement judgement, AccuracyClass accuracy, double detectionLimitMassFraction) {
        return new MethodSettings(judgement, accuracy, DEFAULT_FLOOR_MASS_FRACTION, detectionLimitMassFraction);
    }
}
