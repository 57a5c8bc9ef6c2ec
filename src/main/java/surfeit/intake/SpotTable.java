package surfeit.intake;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.composition.Basis;
import surfeit.element.Spelling;

/**
 * Reads a table of spots, wide, long or turned, and hands the spots on one by one.
 *
 * <p>Wide: one spot a row, {@code label;feature;particle;Ag at%;Cu at%}. Long: one element a row,
 * {@code label,element,at%,u}. Turned: one element a row and one spot a column; it is held whole. The dialect is decided
 * once. A title above the header and summary rows and notes at the foot are left out; one of the foot with spots below
 * it is a fault, since it cannot be told from a spot. Memory grows by some 25 bytes a spot, by which repeats are found,
 * and not otherwise.
 */
public final class SpotTable {
    /** Summary rows held until the table's end shows that they are its foot. Judgement: bounds memory. */
    private static final int FOOT_MAX = 1_000;

    private final IntakeOptions options;
    private final SpotIntake intake;
    private final NumberReader numbers;
    private final List<CsvRow> foot = new ArrayList<>();
    private Optional<TableHeader> header = Optional.empty();
    private boolean turned;
    private boolean merged;

    private SpotTable(IntakeOptions options, SpotIntake intake) {
        this.options = options;
        this.intake = intake;
        this.numbers = NumberReader.of(options.stated());
    }

    /**
     * Reads a table into an intake; {@link SpotIntake#report} then says what became of it.
     *
     * @throws IOException if the upload's bytes cannot be read; whatever the bytes are is a fault, never an exception
     */
    public static void read(Upload upload, IntakeOptions options, SpotIntake intake) throws IOException {
        try {
            new SpotTable(options, intake).read(upload);
        } catch (Refusal refusal) {
            intake.refuseTable(refusal.at(new Place.Row(1)));
        } catch (CharacterCodingException e) {
            intake.refuseTable(new Fault(FaultCode.UNREADABLE_TABLE,
                "Expected characters of the stated charset, found bytes that are none of it.", new Place.Row(1)));
        } catch (CsvRows.BrokenTableException e) {
            intake.refuseTable(e.fault());
        }
    }

    private void read(Upload upload) throws IOException {
        CharsetChoice charset = CharsetChoice.of(upload, options.stated());
        DelimiterChoice delimiter;
        try (Reader text = charset.open(upload)) {
            delimiter = DelimiterChoice.of(text, options.stated());
        }
        try (CsvRows rows = new CsvRows(charset.open(upload), delimiter.delimiter(), options.limits())) {
            if (delimiter.skipsFirstRow()) {
                rows.next();
            }
            readTable(rows, delimiter.delimiter());
        } finally {
            intake.dialect(dialect(charset, delimiter));
        }
    }

    private CsvDialect dialect(CharsetChoice charset, DelimiterChoice delimiter) {
        Optional<Basis> unit = header.isPresent() ? header.get().basis() : options.stated().unit();
        return new CsvDialect(charset.charset(), delimiter.delimiter(), numbers.mark(), options.stated().timeZone(),
            unit, header.map(this::layout),
            CsvDialect.DecidedBy.of(options.stated()));
    }

    private void readTable(CsvRows rows, char delimiter) {
        HeaderSearch search = new HeaderSearch(rows, intake);
        Optional<CsvRow> row = search.header();
        if (row.isPresent()) {
            HeaderCells cells = new HeaderCells.OfColumns(row.get());
            header = HeaderReader.read(cells, options, intake);
            header.ifPresent(known -> readSpots(search, known, delimiter, cells));
        } else {
            turned = true;
            TurnedTable table = TurnedTable.of(search, options, intake);
            header = HeaderReader.read(table, options, intake);
            header.ifPresent(known -> {
                begin(known, delimiter);
                table.read(known, delimiter, options, numbers, intake);
                requireSpots();
            });
        }
    }

    private CsvDialect.Layout layout(TableHeader known) {
        return turned ? CsvDialect.Layout.TURNED : merged ? CsvDialect.Layout.MERGED
            : known.isLong() ? CsvDialect.Layout.LONG : CsvDialect.Layout.WIDE;
    }

    private void begin(TableHeader known, char delimiter) {
        intake.begin(new TableHead(known.names(), delimiter, known.wordColumns()));
    }

    private void requireSpots() {
        if (intake.spotCount() == 0) {
            throw Refusal.expected(FaultCode.UNREADABLE_TABLE, "at least one spot below the header", "none");
        }
    }

    private void readSpots(HeaderSearch rows, TableHeader known, char delimiter, HeaderCells cells) {
        begin(known, delimiter);
        SpotRows spots = known.isLong() ? new LongRows(known, delimiter, options, numbers, intake)
            : new WideRows(known, delimiter, options, numbers, intake);
        long lastLine = 0;
        for (Optional<CsvRow> row = rows.next(); row.isPresent(); row = rows.next()) {
            countRow(row.get());
            if (!spots.isTotalOfSpotAbove(row.get()) && footName(row.get(), known, lastLine).isPresent()) {
                foot.add(row.get());
                requireShortFoot(row.get());
            } else {
                rejectFoot(known);
                spots.read(row.get());
                lastLine = row.get().line();
            }
        }
        spots.finish();
        merged = spots.hasMergedLabels();
        spots.tell(cells);
        leaveFootOut(known);
        requireSpots();
    }

    /** What a row of the foot goes by: a summary's name, or the words of a note; empty where it may be a spot. */
    private Optional<String> footName(CsvRow row, TableHeader known, long lastLine) {
        boolean apart = !foot.isEmpty() || row.line() > lastLine + 1;
        return SummaryRows.name(row.cells(), known)
            .or(() -> apart ? SummaryRows.note(row.cells()) : Optional.empty());
    }

    private void countRow(CsvRow row) {
        try {
            intake.countRow();
        } catch (Refusal refusal) {
            throw new CsvRows.BrokenTableException(refusal.at(new Place.Row(row.line())));
        }
    }

    private void requireShortFoot(CsvRow row) {
        if (foot.size() > FOOT_MAX) {
            throw new CsvRows.BrokenTableException(new Fault(FaultCode.UNREADABLE_TABLE, "Expected at most " + FOOT_MAX
                + " summary rows at the foot, found more.", new Place.Row(row.line())));
        }
    }

    /** What seemed to be the foot has spots below it. */
    private void rejectFoot(TableHeader known) {
        for (CsvRow row : foot) {
            String name = footName(row, known, 0).orElse("");
            int column = row.cells().indexOf(name);
            Fault fault = new Fault(FaultCode.UNREADABLE_TABLE, "Expected summary rows at the foot only, found "
                + Spelling.quoted(name)
                + " with spots below it; if it is a spot, give it another label, else move it to the foot.",
                new Place.Cell(row.line(), Math.max(column, 0) + 1, known.name(Math.max(column, 0)), name));
            intake.reject(List.of(row), List.of(fault));
        }
        foot.clear();
    }

    private void leaveFootOut(TableHeader known) {
        for (CsvRow row : foot) {
            Optional<String> summary = SummaryRows.name(row.cells(), known);
            String reason = summary.isEmpty() ? "note at the foot"
                : SummaryRows.isNominal(summary.get()) ? "the nominal composition, no spot" : "summary row";
            intake.leaveOut(new LeftOut.Row(row.line(), reason, footName(row, known, 0).orElse("")));
        }
        foot.clear();
    }
}
