package surfeit.lab;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import surfeit.spot.Sample;

/** Uploads of spots: records them, and tells what became of them. Thread-safe. */
public final class Imports {
    /** Samples whose description is kept in mind. Judgement: some kilobytes each. */
    private static final int LATELY_MAX = 256;

    private final Store store;
    private final Sums sums;
    private final Map<String, Sample> lately = new ConcurrentHashMap<>();

    Imports(Store store, Sums sums) {
        this.store = store;
        this.sums = sums;
    }

    /**
     * How a sample was described lately: enough to read an upload ahead, for a sample never ceases to be, and whoever
     * records the upload looks again.
     *
     * @throws ProblemException not-found
     */
    public Sample lately(String sample) {
        Optional<Sample> known = Optional.ofNullable(lately.get(sample));
        return known.orElseGet(() -> {
            Sample now = store.read(access -> Lookups.sample(access, sample)).sample();
            remember(sample, now);
            return now;
        });
    }

    private void remember(String sample, Sample described) {
        if (lately.size() >= LATELY_MAX) {
            lately.clear();
        }
        lately.put(sample, described);
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
                new SpotImport(access, Lookups.sample(access, sample), options, occasion, progress,
                    recorded -> Optional.empty()).run(upload, rows)));
        }
        return store.write(recording(sample, upload, new RowsAlong(rows), options, occasion, progress));
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
        return store.writeShared(rows.foreseen(sample), recording(sample, upload, rows, options, occasion, progress));
    }

    private Function<WriteAccess, ImportReport> recording(String sample, Upload upload, SpotRows rows,
                                                          ImportOptions options, Occasion occasion,
                                                          ImportProgress progress) {
        return access -> {
            StoredSample present = Lookups.sample(access, sample);
            if (lately.containsKey(sample)) {
                lately.put(sample, present.sample());
            }
            SpotImport work = new SpotImport(access, present, options, occasion, progress,
                recorded -> sums.along(access, present, recorded));
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
