package surfeit.segregation.answer;

/** Why a verdict is inconclusive. */
public enum Reason {
    /** The spots agree; the shift is no larger than the calibration error can make. */
    CALIBRATION("calibration"),
    /** The particles differ too much. */
    SCATTER("scatter"),
    /** Both of these. */
    CALIBRATION_AND_SCATTER("calibration_and_scatter"),
    /** Neither: the shift lies near the margin. */
    BETWEEN("between"),
    /** Every spot is below a limit that lies above nominal. */
    LIMIT_ABOVE_NOMINAL("limit_above_nominal"),
    /** One spot without a stated uncertainty: nothing tells its scatter. */
    NO_REPEAT_AND_NO_SIGMA("no_repeat_and_no_sigma");

    private final String word;

    Reason(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
