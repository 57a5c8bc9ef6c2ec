package surfeit.lab;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import surfeit.intake.CsvDialect;
import surfeit.intake.CsvRow;
import surfeit.intake.FaultCode;
import surfeit.intake.IntakeOptions;
import surfeit.intake.IntakeReport;
import surfeit.intake.ReadSpot;
import surfeit.intake.RejectedSpot;
import surfeit.intake.RejectedTable;
import surfeit.intake.SpotIntake;
import surfeit.intake.SpotSink;
import surfeit.intake.TableHead;
import surfeit.spot.Sample;

/**
 * Hands what a reader of uploads finds on to whoever records or interprets it. Thread-safe, as far as its reader is.
 */
public final class IntakeRows implements SpotRows {
    private static final String TABLE = "text/csv";

    private final IntakeOptions options;
    private final Reader reader;

    /** Reads an upload into an intake; {@code SpotTable::read} is one. */
    public interface Reader {
        void read(surfeit.intake.Upload upload, IntakeOptions options, SpotIntake intake) throws IOException;
    }

    public IntakeRows(IntakeOptions options, Reader reader) {
        this.options = options;
        this.reader = reader;
    }

    @Override
    public void read(Upload upload, Sample sample, Sink sink) throws IOException {
        if (!upload.mediaType().equals(TABLE)) {
            sink.rejectedHeader(RejectedDocument.HEAD);
        }
        SpotIntake intake = new SpotIntake(options.limits(), new Bridge(sink));
        reader.read(upload, options.withULevel(sample.judgement().uLevel()), intake);
        IntakeReport report = intake.report();
        report.dialect().ifPresent(dialect -> sink.dialect(echo(dialect)));
        report.leftOut().forEach(part -> sink.leftOut(IntakeFaults.leftOut(part)));
        if (report.tableRefused()) {
            throw refusal(report);
        }
    }

    private static ProblemException refusal(IntakeReport report) {
        List<Fault> faults = report.faults().stream().map(IntakeFaults::fault).toList();
        Fault first = faults.stream().filter(fault -> fault.code() == Problem.UPLOAD_TOO_LARGE).findFirst()
            .orElse(faults.get(0));
        String detail = report.faultCount() == 1 ? first.detail()
            : report.faultCount() + " faults; nothing was recorded. The first: " + first.detail();
        return new ProblemException(first.code(), detail, faults, report.faultCount(), Fault.setting(faults));
    }

    private static Dialect echo(CsvDialect dialect) {
        return new Dialect(dialect.charsetName(), Optional.of(dialect.delimiterName()),
            dialect.decimal().map(String::valueOf), dialect.timeZone().map(Object::toString),
            dialect.unit().map(unit -> unit.unit()),
            dialect.layout().map(CsvDialect.Layout::words), dialect.decidedBy().words());
    }

    /** One upload's way from the reader to the sink. */
    private static final class Bridge implements SpotSink {
        private final Sink sink;
        private Optional<RejectedTable> table = Optional.empty();

        Bridge(Sink sink) {
            this.sink = sink;
        }

        @Override
        public void begin(TableHead head) {
            table = Optional.of(new RejectedTable(head));
            sink.rejectedHeader(table.get().header().stripTrailing());
        }

        @Override
        public void accept(ReadSpot read) {
            sink.spot(read.spot(), row(IntakeFaults.place(read.place()), read.rows()));
        }

        @Override
        public void reject(RejectedSpot rejected) {
            List<Fault> faults = rejected.faults().stream().map(IntakeFaults::fault).toList();
            sink.rejected(row(faults.isEmpty() ? Place.WHOLE : faults.get(0).place(), rejected.rows()), faults);
        }

        private Row row(Place place, List<CsvRow> rows) {
            Optional<RejectedTable> of = table;
            return new Row() {
                @Override
                public Place place() {
                    return place;
                }

                @Override
                public String rejectedLines(List<Fault> faults) {
                    List<surfeit.intake.Fault> back = faults.stream().map(Bridge::back).toList();
                    return of.map(known -> known.lines(new RejectedSpot(rows, back)))
                        .orElseGet(() -> RejectedDocument.lines(place, faults));
                }
            };
        }

        private static surfeit.intake.Fault back(Fault fault) {
            surfeit.intake.Place place = fault.place().line().isPresent()
                ? new surfeit.intake.Place.Row(fault.place().line().getAsLong()) : new surfeit.intake.Place.Row(0);
            return new surfeit.intake.Fault(FaultCode.valueOf(fault.code().name()), fault.detail(), place);
        }
    }
}
