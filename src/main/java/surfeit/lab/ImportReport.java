package surfeit.lab;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What became of an upload.
 *
 * @param id             public id; absent where nothing was recorded (all known already, or only a rehearsal)
 * @param sample         name of the sample
 * @param occasion       by whom and when
 * @param sampleRevision revision of the sample after it
 * @param acceptedCount  spots recorded
 * @param unchangedCount spots that were on record with the same values
 * @param rejectedCount  spots not recorded
 * @param faultCount     faults in all; a rejected spot has at least one
 * @param leftOut        rows and columns that are no measurement, at most the first {@value #LEFT_OUT_MAX}
 * @param dialect        how the upload was read, where there was something to decide
 * @param faults         the faults, at most the first {@link ProblemException#FAULTS_IN_FULL}
 * @param file           what was sent
 */
public record ImportReport(Optional<String> id, String sample, Occasion occasion, long sampleRevision,
                           long acceptedCount, long unchangedCount, long rejectedCount, long faultCount,
                           List<LeftOut> leftOut, Optional<Dialect> dialect, List<Fault> faults, SentFile file) {
    /** How many left-out rows and columns a report lists. */
    public static final int LEFT_OUT_MAX = 1000;

    public ImportReport {
        leftOut = List.copyOf(leftOut);
        faults = List.copyOf(faults);
    }

    /**
     * The file as it was sent.
     *
     * @param byteCount its length; absent where nothing was recorded
     * @param sha256    its SHA-256 in hex; absent where nothing was recorded
     */
    public record SentFile(String mediaType, Optional<String> fileName, OptionalLong byteCount,
                           Optional<String> sha256) {
    }
}
