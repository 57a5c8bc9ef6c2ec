package surfeit.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.element.Spelling;
import surfeit.spot.Spot;

/**
 * The one gate for the spots of an upload, whatever its form: it counts, finds repeats, gathers faults and hands good
 * spots on. Use one per upload; not thread-safe.
 *
 * <p>The same natural key (session, label, time of acquisition) again with the same values is ignored and listed; with
 * other values it is a fault, and the first one stays.
 */
public final class SpotIntake {
    private final IntakeLimits limits;
    private final SpotSink sink;
    private final FaultList faults = new FaultList();
    private final List<LeftOut> leftOut = new ArrayList<>();
    private final SeenSpots seen = new SeenSpots();
    private Optional<CsvDialect> dialect = Optional.empty();
    private long leftOutCount;
    private long rows;
    private int offered;
    private long accepted;
    private long repeated;
    private long rejected;
    private boolean tableRefused;

    public SpotIntake(IntakeLimits limits, SpotSink sink) {
        this.limits = limits;
        this.sink = sink;
    }

    /** Counts a row or spot before it is read. @throws Refusal beyond the limit, for the upload as a whole */
    public void countRow() {
        if (++rows > limits.rowsMax()) {
            throw Refusal.expected(FaultCode.UPLOAD_TOO_LARGE, "at most " + limits.rowsMax() + " rows or spots",
                "more").setting(IntakeLimits.ROWS_SETTING);
        }
    }

    /** Hands a spot on, unless it came before; false where it came before with other values. */
    public boolean offer(ReadSpot read) {
        offered++;
        int number = read.place() instanceof Place.Row row ? place(row.line())
            : read.place() instanceof Place.Cell cell ? cell.column() : offered;
        SeenSpots.Before before = seen.look(read.spot(), number);
        switch (before) {
            case NOTHING -> {
                accepted++;
                sink.accept(read);
            }
            case THE_SAME -> {
                repeated++;
                leaveOutRepeat(read, "the same spot with the same values as " + firstPlace(read.place()));
            }
            case OTHER_VALUES -> {
                Refusal refusal = Refusal.expected(FaultCode.DUPLICATE_SPOT, "every spot once",
                    Spelling.quoted(read.spot().label()) + " again with other values than " + firstPlace(read.place())
                    + ownLabel(read.spot()));
                reject(read.rows(), List.of(refusal.at(read.place())));
            }
        }
        return before != SeenSpots.Before.OTHER_VALUES;
    }

    /** How spots that were counted anew on every particle are told apart. */
    private static String ownLabel(Spot spot) {
        return spot.particle().filter(particle -> !spot.label().contains(particle))
            .map(particle -> "; where spots are counted anew on each particle, write both into the label, such as "
                + Spelling.quoted(particle + "-" + spot.label())).orElse("");
    }

    /** Remembers a spot that is rejected, so that more rows of it further down are no spot of their own. */
    void rememberRejected(long keyFingerprint, long line) {
        seen.rememberRejected(keyFingerprint, place(line));
    }

    /** Refuses the upload as a whole for a fault that was told already. */
    void refuseTable() {
        tableRefused = true;
    }

    private static int place(long line) {
        return (int) Math.min(line, Integer.MAX_VALUE);
    }

    /** Counts one spot that cannot be taken, with all its faults; {@code rows} are its rows in the table, if any. */
    public void reject(List<CsvRow> spotRows, List<Fault> spotFaults) {
        rejected++;
        rejectMore(spotRows, spotFaults);
    }

    /** Adds rows and faults to a spot that is rejected already. */
    void rejectMore(List<CsvRow> spotRows, List<Fault> spotFaults) {
        spotFaults.forEach(faults::add);
        sink.reject(new RejectedSpot(spotRows, spotFaults));
    }

    /** Refuses the upload as a whole. */
    public void refuseTable(Fault fault) {
        tableRefused = true;
        faults.add(fault);
    }

    /** Lists a row or column that is left out. */
    public void leaveOut(LeftOut part) {
        leftOutCount++;
        if (leftOut.size() < IntakeReport.LEFT_OUT_MAX) {
            leftOut.add(part);
        }
    }

    /** Tells how the table is written, and its header where that could be read. */
    void dialect(CsvDialect decided) {
        dialect = Optional.of(decided);
    }

    void begin(TableHead head) {
        sink.begin(head);
    }

    /** How many spots were seen, good or not. */
    public long spotCount() {
        return accepted + repeated + rejected;
    }

    /** What became of the upload so far. */
    public IntakeReport report() {
        return new IntakeReport(dialect, accepted, repeated, rejected, faults.count(), faults.kept(), tableRefused,
            leftOut, leftOutCount);
    }

    private void leaveOutRepeat(ReadSpot read, String reason) {
        String label = read.spot().label();
        if (read.place() instanceof Place.Row) {
            read.rows().forEach(row -> leaveOut(new LeftOut.Row(row.line(), reason, label)));
        } else if (read.place() instanceof Place.Cell cell) {
            leaveOut(new LeftOut.Column(cell.column(), cell.columnName(), reason));
        } else if (read.place() instanceof Place.Pointer pointer) {
            leaveOut(new LeftOut.Spot(pointer, reason, label));
        }
    }

    private String firstPlace(Place again) {
        String part = again instanceof Place.Row ? "in line " : again instanceof Place.Cell ? "in column " : "in spot ";
        return part + seen.firstPlace();
    }
}
