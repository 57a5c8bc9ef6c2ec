package surfeit.lab;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;

/** Uploads of spots: records them, and tells what became of them. Thread-safe. */
public final class Imports {
    private final Store store;
    private final Sums sums;

    Imports(Store store, Sums sums) {
        this.store = store;
        this.sums = sums;
    }

    /**
     * Records the spots of an upload.
     *
     * @throws ProblemException where the upload cannot be read, or has faults and {@code onError} is refuse
     */
    public ImportReport record(String sample, Upload upload, SpotRows rows, ImportOptions options, Occasion occasion,
                               ImportProgress progress) {
        if (options.validateOnly()) {
            return SpotImport.rehearsed(store.rehearse(access ->
                new SpotImport(access, Lookups.sample(access, sample), options, occasion, progress).run(upload, rows)));
        }
        return store.write(recording(sample, upload, rows, options, occasion, progress));
    }

    /**
     * As {@link #record}, for a small upload that lies in memory and was read ahead: it shares its commit with others,
     * and no thread waits for it.
     *
     * @return as {@link Store#writeShared}
     */
    public CompletableFuture<ImportReport> recordShared(String sample, Upload upload, RowsReadAhead rows,
                                                        ImportOptions options, Occasion occasion,
                                                        ImportProgress progress) {
        return store.writeShared(recording(sample, upload, rows, options, occasion, progress));
    }

    private Function<WriteAccess, ImportReport> recording(String sample, Upload upload, SpotRows rows,
                                                          ImportOptions options, Occasion occasion,
                                                          ImportProgress progress) {
        return access -> {
            SpotImport work = new SpotImport(access, Lookups.sample(access, sample), options, occasion, progress);
            ImportReport report = work.run(upload, rows);
            sums.imported(access, sample, work);
            return report;
        };
    }

    public ImportReport report(String id) {
        return store.read(access -> Lookups.importReport(access, id));
    }

    /** The bytes of an upload as they were sent. */
    public KeptFile original(String importId) {
        ImportReport report = report(importId);
        return new KeptFile(report.file().mediaType(), report.file().fileName(),
            new KeptFileStream(store, Lookups.importNumber(importId), KeptFile.Kind.ORIGINAL));
    }

    /** The rows an import gave back, each with its faults in one column more. */
    public KeptFile rejected(String importId) {
        if (report(importId).rejectedCount() == 0) {
            throw new ProblemException(Problem.NOT_FOUND, "Import " + importId + " rejected no row.");
        }
        return new KeptFile("text/csv", Optional.of("rejected.csv"),
            new KeptFileStream(store, Lookups.importNumber(importId), KeptFile.Kind.REJECTED));
    }
}
