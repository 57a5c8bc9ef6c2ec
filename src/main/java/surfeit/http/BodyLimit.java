package surfeit.http;

import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/**
 * How much of one body is taken, and how long that may last.
 *
 * @param bytesMax   bytes after inflation
 * @param setting    the setting that holds this number
 * @param stallNanos longest pause
 * @param totalNanos longest time in all
 */
record BodyLimit(long bytesMax, String setting, long stallNanos, long totalNanos) {
    private static final double NANOS_PER_S = 1e9;

    static BodyLimit of(Form form, RequestLimits limits) {
        return new BodyLimit(form == Form.JSON ? limits.jsonBytesMax() : limits.uploadBytesMax(),
            form == Form.JSON ? RequestLimits.JSON_BYTES_SETTING : RequestLimits.UPLOAD_BYTES_SETTING,
            limits.bodyStall().toNanos(), limits.bodyTotal().toNanos());
    }

    /** @throws ProblemException upload-too-large */
    void requireFits(long bytes, String found) {
        if (bytes > bytesMax) {
            throw new ProblemException(Problem.UPLOAD_TOO_LARGE, "Expected a body of at most " + bytesMax
                + " bytes after inflation, "
                + found + ".").withSetting(setting);
        }
    }

    ProblemException stalled() {
        return new ProblemException(Problem.REQUEST_TIMEOUT, "The body stalled for " + stallNanos / NANOS_PER_S + " s.")
            .withSetting(RequestLimits.STALL_SETTING);
    }

    ProblemException tooLong() {
        return new ProblemException(Problem.REQUEST_TIMEOUT, "The body took longer than " + totalNanos / NANOS_PER_S
            + " s in all.")
            .withSetting(RequestLimits.TOTAL_SETTING);
    }
}
