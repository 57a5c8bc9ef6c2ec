package surfeit.http;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Supplier;
import surfeit.intake.UnfinishedUploadException;
import surfeit.lab.ImportReport;

/** The recording of an upload that was begun while it arrives, in a thread of its own. Thread-safe. */
final class EarlyRecording {
    private final CompletableFuture<ImportReport> report;

    /** @param recording ends soon after the upload does, whatever becomes of that */
    EarlyRecording(Supplier<ImportReport> recording) {
        report = CompletableFuture.supplyAsync(recording, task -> new Thread(task, "surfeit-import").start());
    }

    /**
     * What became of it, once it is over.
     *
     * @return empty where nothing of it is on record, and it is to be recorded now that it is whole
     * @throws surfeit.lab.ProblemException as {@link surfeit.lab.Imports#record}
     */
    Optional<ImportReport> ended() {
        try {
            return Optional.of(report.join());
        } catch (CompletionException e) {
            if (isOfUnfinished(e)) {
                return Optional.empty();
            }
            if (e.getCause() instanceof Error error) {
                throw error;
            }
            throw e.getCause() instanceof RuntimeException cause ? cause : e;
        }
    }

    private static boolean isOfUnfinished(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof UnfinishedUploadException) {
                return true;
            }
        }
        return false;
    }

    /** Waits until it is over, whatever became of it. */
    void awaitEnd() {
        report.handle((done, failure) -> done).join();
    }
}
