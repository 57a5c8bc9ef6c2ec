package surfeit.intake;

import java.util.List;
import java.util.Optional;

/**
 * What became of an upload.
 *
 * @param dialect       how the table was written; absent for JSON and where it could not be decided
 * @param acceptedCount spots handed on and not taken back
 * @param repeatedCount spots that stand in the upload twice with the same values, ignored the second time
 * @param rejectedCount spots with a fault
 * @param faultCount    all faults
 * @param faults        the first of them, in full
 * @param tableRefused  true where a fault is of the whole upload: then nothing of it may be kept, not even the spots
 *                      without fault, since nobody can tell what the rest says
 * @param leftOut       the first rows and columns left out
 * @param leftOutCount  all of them
 */
public record IntakeReport(Optional<CsvDialect> dialect, long acceptedCount, long repeatedCount, long rejectedCount,
                           long faultCount, List<Fault> faults, boolean tableRefused, List<LeftOut> leftOut,
                           long leftOutCount) {
    /** Rows and columns left out that are listed. Judgement. */
    public static final int LEFT_OUT_MAX = 1_000;

    public IntakeReport {
        faults = List.copyOf(faults);
        leftOut = List.copyOf(leftOut);
    }

    /** True where every spot was read without a fault. */
    public boolean isClean() {
        return faultCount == 0;
    }
}
