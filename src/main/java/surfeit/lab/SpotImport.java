package surfeit.lab;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.LongFunction;
import surfeit.spot.Spot;

/**
 * One upload on its way into the record: checks every spot against what is there, and keeps the account of it.
 *
 * <p>Runs within one transaction, in memory that does not grow with the upload: spots go to the record in lots. For
 * one use.
 */
final class SpotImport implements SpotRows.Sink {
    /** Spots handed to the record at once. Judgement: enough that the call costs little beside its rows. */
    private static final int LOT = 256;

    private final WriteAccess access;
    private final StoredSample sample;
    private final ImportOptions options;
    private final Occasion occasion;
    private final ImportProgress progress;
    private final SpotImportAccess record;
    private final FileCopy rejectedFile;

    private final LongFunction<Optional<SumsAlong>> sumsAlong;

    private final List<Fault> faults = new ArrayList<>();
    private final List<LeftOut> leftOut = new ArrayList<>();
    private final List<Spot> lot = new ArrayList<>(LOT);
    private final List<SpotRows.Row> lotRows = new ArrayList<>(LOT);
    private Optional<Dialect> dialect = Optional.empty();
    private long accepted;
    private boolean referencesAccepted;
    private final List<SumsAlong.Numbered> firstAccepted = new ArrayList<>();
    private Optional<SumsAlong> sums = Optional.empty();
    private long unchanged;
    private long rejected;
    private long faultCount;
    private long alreadyRecorded;

    /** @param sumsAlong sums to be made on the way, by how many spots were recorded when they begin */
    SpotImport(WriteAccess access, StoredSample sample, ImportOptions options, Occasion occasion,
               ImportProgress progress, LongFunction<Optional<SumsAlong>> sumsAlong) {
        this.progress = progress;
        this.sumsAlong = sumsAlong;
        this.access = access;
        this.sample = sample;
        this.options = options;
        this.occasion = occasion;
        this.record = access.startImport(sample, occasion);
        this.rejectedFile = new FileCopy(record, KeptFile.Kind.REJECTED);
    }

    ImportReport run(Upload upload, SpotRows rows) {
        try {
            rows.read(upload, sample.sample(), this);
            recordLot();
        } catch (IOException e) {
            throw new UncheckedIOException("The upload could not be read again from where it was put.", e);
        }
        if (faultCount > 0 && options.onError() == ImportOptions.OnError.REFUSE) {
            throw refusal();
        }
        if (accepted == 0 && rejected == 0) {
            return report(Optional.empty(), new ImportReport.SentFile(upload.mediaType(), upload.fileName(),
                OptionalLong.empty(), Optional.empty()));
        }
        return finish(upload);
    }

    /** Whether any spot that was recorded is one on a piece of known composition. */
    boolean hasRecordedReferences() {
        return referencesAccepted;
    }

    /** Sums of the sample's spots that were made on the way; empty where the upload was too small for that. */
    Optional<SumsAlong> sumsAlong() {
        return referencesAccepted ? Optional.empty() : sums;
    }

    /** The first spots that were recorded: all, unless so many that the sums go on anyway. */
    List<Spot> firstRecorded() {
        return firstAccepted.stream().map(SumsAlong.Numbered::spot).toList();
    }

    private ImportReport finish(Upload upload) {
        rejectedFile.flush();
        FileCopy original = new FileCopy(record, KeptFile.Kind.ORIGINAL);
        original.copy(upload);
        ImportReport report = report(Optional.of(record.id()), new ImportReport.SentFile(upload.mediaType(),
            upload.fileName(), OptionalLong.of(original.byteCount()), Optional.of(original.sha256())));
        record.finish(report);
        access.append(Events.imported(occasion, sample.name(), record.id(), accepted));
        access.audit(occasion, "spots imported", Optional.of(sample.name()), record.id() + ": " + accepted
            + " accepted, " + unchanged + " unchanged, " + rejected + " rejected; original sha256:"
            + report.file().sha256().orElseThrow());
        if (accepted > 0) {
            Staleness.sampleChanged(access, sample.name(), InputChange.ofSample(SampleRevision.What.SPOTS_IMPORTED,
                report.sampleRevision(), occasion, report.id()));
        }
        return report;
    }

    private ImportReport report(Optional<String> id, ImportReport.SentFile file) {
        return new ImportReport(id, sample.name(), occasion, sample.revision() + (accepted > 0 ? 1 : 0), accepted,
            unchanged, rejected, faultCount, leftOut, dialect, faults, file);
    }

    /** The report of a rehearsal: nothing can be asked for under its id. */
    static ImportReport rehearsed(ImportReport report) {
        return new ImportReport(Optional.empty(), report.sample(), report.occasion(), report.sampleRevision(),
            report.acceptedCount(), report.unchangedCount(), report.rejectedCount(), report.faultCount(),
            report.leftOut(), report.dialect(), report.faults(), report.file());
    }

    private ProblemException refusal() {
        Problem problem = alreadyRecorded == faultCount ? Problem.SPOT_ALREADY_RECORDED
            : faults.stream().map(Fault::code).filter(code -> code != Problem.SPOT_ALREADY_RECORDED).findFirst()
                .orElse(Problem.VALUE_OUT_OF_RANGE);
        String detail = faultCount == 1 ? faults.get(0).detail()
            : faultCount + " faults; nothing was recorded. The first: " + faults.get(0).detail();
        return new ProblemException(problem, detail, faults, faultCount, Fault.setting(faults));
    }

    @Override
    public void dialect(Dialect decided) {
        dialect = Optional.of(decided);
    }

    @Override
    public void rejectedHeader(String line) {
        if (options.onError() == ImportOptions.OnError.SKIP) {
            rejectedFile.setHead(line + "\n");
        }
    }

    @Override
    public void spot(Spot spot, SpotRows.Row row) {
        List<Fault> found = SpotRules.faults(spot, row.place());
        if (!found.isEmpty()) {
            rejected(row, found);
            return;
        }
        lot.add(spot);
        lotRows.add(row);
        if (lot.size() == LOT) {
            recordLot();
        }
    }

    private void recordLot() {
        if (lot.isEmpty()) {
            return;
        }
        long number = record.nextSpot();
        List<Optional<SpotImportAccess.Recorded>> found = record.add(lot);
        List<SumsAlong.Numbered> recorded = new ArrayList<>(LOT);
        for (int i = 0; i < found.size(); i++) {
            if (found.get(i).isPresent()) {
                compare(lot.get(i), found.get(i).get(), lotRows.get(i));
            } else {
                accepted++;
                referencesAccepted |= lot.get(i).isReference();
                recorded.add(new SumsAlong.Numbered(number + i, lot.get(i)));
            }
        }
        sumUp(recorded);
        lot.clear();
        lotRows.clear();
        progress.done(accepted + unchanged + rejected);
    }

    /** Sums are begun once the upload is so large that they are due when it ends. */
    private void sumUp(List<SumsAlong.Numbered> recorded) {
        sums.ifPresent(along -> along.recorded(recorded));
        if (firstAccepted.size() > Sums.LATER_SPOTS_MAX) {
            return;
        }
        firstAccepted.addAll(recorded);
        if (firstAccepted.size() > Sums.LATER_SPOTS_MAX) {
            sums = sumsAlong.apply(accepted);
            sums.ifPresent(along -> along.recorded(firstAccepted));
        }
    }

    private void compare(Spot spot, SpotImportAccess.Recorded recorded, SpotRows.Row row) {
        List<String> differences = SpotDifference.between(recorded.spot(), spot);
        if (differences.isEmpty()) {
            unchanged++;
        } else {
            reject(row, List.of(collision(spot, recorded, row.place(), String.join("; ", differences))));
        }
    }

    private static Fault collision(Spot spot, SpotImportAccess.Recorded recorded, Place place, String differences) {
        if (recorded.inThisImport()) {
            return Fault.at(place, Problem.DUPLICATE_SPOT, "Spot \"" + spot.label()
                + "\" comes twice in this upload, with the same session and acquired time and other values: "
                + differences + ".", spot.label());
        }
        return new Fault(Problem.SPOT_ALREADY_RECORDED, "Spot \"" + spot.label() + "\" is on record as " + recorded.id()
            + (recorded.withdrawn() ? " (withdrawn)" : "") + " with other values; recorded -> sent: " + differences
            + ".", place, Optional.of(spot.label()), Optional.of(recorded.id()));
    }

    @Override
    public void rejected(SpotRows.Row row, List<Fault> found) {
        recordLot();
        reject(row, found);
    }

    private void reject(SpotRows.Row row, List<Fault> found) {
        rejected++;
        for (Fault fault : found) {
            faultCount++;
            if (fault.code() == Problem.SPOT_ALREADY_RECORDED) {
                alreadyRecorded++;
            }
            if (faults.size() < ProblemException.FAULTS_IN_FULL) {
                faults.add(fault);
            }
        }
        if (options.onError() == ImportOptions.OnError.SKIP) {
            rejectedFile.append(row.rejectedLines(found));
        }
    }

    @Override
    public void leftOut(LeftOut what) {
        if (leftOut.size() < ImportReport.LEFT_OUT_MAX) {
            leftOut.add(what);
        }
    }
}
