package surfeit.http.measure;

import java.util.concurrent.atomic.LongAdder;
import surfeit.lab.ImportReport;

/** Counts imports and the spots in them. Thread-safe. */
public final class ImportMeasures {
    private static final String OUTCOME = "outcome";

    private final LongAdder recorded = new LongAdder();
    private final LongAdder known = new LongAdder();
    private final LongAdder refused = new LongAdder();
    private final LongAdder accepted = new LongAdder();
    private final LongAdder unchanged = new LongAdder();
    private final LongAdder rejected = new LongAdder();

    /** An upload that was not refused: recorded, or known already. */
    public void done(ImportReport report) {
        (report.id().isPresent() ? recorded : known).increment();
        accepted.add(report.acceptedCount());
        unchanged.add(report.unchangedCount());
        rejected.add(report.rejectedCount());
    }

    public void refused() {
        refused.increment();
    }

    void write(MetricsText text) {
        text.family("surfeit_imports_total", MetricsText.Type.COUNTER, "Uploads of spots that were dealt with.")
            .sample("surfeit_imports_total", recorded.sum(), OUTCOME, "recorded")
            .sample("surfeit_imports_total", known.sum(), OUTCOME, "unchanged")
            .sample("surfeit_imports_total", refused.sum(), OUTCOME, "refused");
        text.family("surfeit_import_spots_total", MetricsText.Type.COUNTER, "Spots of uploads that were not refused.")
            .sample("surfeit_import_spots_total", accepted.sum(), OUTCOME, "accepted")
            .sample("surfeit_import_spots_total", unchanged.sum(), OUTCOME, "unchanged")
            .sample("surfeit_import_spots_total", rejected.sum(), OUTCOME, "rejected");
    }
}
