package surfeit.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import surfeit.composition.Basis;
import surfeit.element.Spelling;

/**
 * A turned table: the elements stand one below the other in the first column, and every further column is one spot.
 *
 * <p>It is held whole, turned, and read as a wide one: its rows are then the columns. What is told of it is told in its
 * own lines and columns. Not thread-safe: one per upload.
 */
final class TurnedTable implements HeaderCells, SpotPlaces {
    /** Rows held at most: elements with uncertainty and counts, fields, titles, notes. Judgement: bounds memory. */
    static final int ROWS_MAX = 200;
    /** Characters held at most, a thousand spots of two hundred rows at twenty. Judgement: bounds memory. */
    private static final long TEXT_MAX = 4_000_000;
    /** Characters that a cell counts for beside its own: what an empty one takes. Judgement. */
    private static final int CELL = 10;

    private final TurnedRows rows;
    private final TurnedColumns columns;
    private final Optional<Basis> cornerUnit;
    private final List<String> names = new ArrayList<>();
    private int spot;

    private TurnedTable(TurnedRows rows, TurnedColumns columns) {
        this.rows = rows;
        this.columns = columns;
        this.cornerUnit = UnitAtTheEdge.of(TurnedRows.cell(rows.labels(), 0)).unit();
    }

    /** Takes the table in and finds out what its rows and columns hold. @throws CsvRows.BrokenTableException */
    static TurnedTable of(HeaderSearch search, IntakeOptions options, SpotIntake intake) {
        TurnedRows sorted = TurnedRows.of(held(search), intake);
        TurnedTable table = new TurnedTable(sorted, TurnedColumns.of(sorted, options.stated().unit(), intake));
        table.requireEqualRows();
        boolean lines = table.linesAreUnderstood();
        if (!lines) {
            int column = table.columns.lines().orElseThrow();
            intake.leaveOut(new LeftOut.Column(column + 1, TurnedRows.cell(sorted.labels(), column), "not understood"));
        }
        sorted.kept().forEach(row -> table.names.add(table.name(row, lines)));
        return table;
    }

    private static List<CsvRow> held(HeaderSearch search) {
        List<CsvRow> held = new ArrayList<>();
        long length = 0;
        for (Optional<CsvRow> row = search.next(); row.isPresent(); row = search.next()) {
            held.add(row.get());
            length += row.get().cells().stream().mapToInt(cell -> cell.length() + CELL).sum();
            if (held.size() > ROWS_MAX || length > TEXT_MAX) {
                throw TurnedRows.refused(new Place.Row(row.get().line()), FaultCode.UNREADABLE_TABLE, "at most " + ROWS_MAX
                    + " rows and " + TEXT_MAX + " characters in a table with a spot a column",
                    "more; send a table with a spot a row");
            }
        }
        return held;
    }

    /** Hands the spots on, column by column. */
    void read(TableHeader header, char delimiter, IntakeOptions options, NumberReader numbers, SpotIntake intake) {
        WideRows spots = new WideRows(header, delimiter, options, numbers, intake, this);
        for (TurnedColumns.SpotColumn column : columns.spots()) {
            spot = column.column();
            try {
                intake.countRow();
            } catch (Refusal refusal) {
                throw new CsvRows.BrokenTableException(refusal.at(spot(rows.labels())));
            }
            spots.read(new CsvRow(rows.labels().line(), rows.kept().stream().map(row -> row == rows.labels()
                ? column.label() : spot < row.cells().size() ? row.cells().get(spot) : "").toList()));
        }
        spots.tell(this);
    }

    /** Every row that is read ends where the labels do. */
    private void requireEqualRows() {
        int width = columns.width();
        for (CsvRow row : rows.kept()) {
            int found = row.cells().size();
            if (found < width) {
                throw TurnedRows.refused(new Place.Cell(row.line(), found + 1, TurnedRows.cell(rows.labels(), found), ""),
                    FaultCode.UNREADABLE_TABLE, width + " columns as in the row of labels", String.valueOf(found));
            }
            if (last(row) > width) {
                throw TurnedRows.refused(new Place.Cell(row.line(), width + 1, "", TurnedRows.cell(row, width)),
                    FaultCode.UNREADABLE_TABLE, width + " columns as in the row of labels", last(row)
                    + "; numbers with a decimal comma need quotes or another delimiter than a comma");
            }
        }
    }

    /** How many cells a row has up to its last filled one. */
    private static int last(CsvRow row) {
        int last = row.cells().size();
        while (last > 0 && CellText.isBlank(row.cells().get(last - 1))) {
            last--;
        }
        return last;
    }

    private boolean linesAreUnderstood() {
        return rows.kept().stream().filter(TurnedRows::isOfElement).allMatch(row -> {
            String line = line(row);
            return line.isEmpty() || ColumnReader.read(TurnedRows.cell(row, 0) + " " + line)
                instanceof ColumnMeaning.Quantity joined && joined.line().isPresent()
                && joined.kind() != ColumnMeaning.Kind.UNCLEAR;
        });
    }

    private String line(CsvRow row) {
        return columns.lines().isPresent()
            ? TurnedRows.cell(row, columns.lines().getAsInt()).replaceAll("[-_](?=\\p{L}{2})", " ") : "";
    }

    /** What the row would be called as a column of a wide table: with its unit and line, wherever they stand. */
    private String name(CsvRow row, boolean withLine) {
        String first = TurnedRows.cell(row, 0);
        if (row == rows.labels()) {
            String name = UnitAtTheEdge.of(first).name();
            boolean isLabel = SpotField.named(name).isPresent() || SpotField.isLabelOfLastResort(name);
            return isLabel ? name : SpotField.LABEL.text();
        }
        if (!(ColumnReader.read(first) instanceof ColumnMeaning.Quantity quantity) || quantity.element().isEmpty()) {
            return first;
        }
        boolean ofUnit = quantity.kind() != ColumnMeaning.Kind.NET_COUNTS
            && quantity.kind() != ColumnMeaning.Kind.BACKGROUND_COUNTS && quantity.kind() != ColumnMeaning.Kind.LINE;
        Optional<Basis> unit = ofUnit ? unit(row, quantity) : Optional.empty();
        String line = withLine && quantity.kind() == ColumnMeaning.Kind.VALUE && quantity.line().isEmpty() ? line(row) : "";
        return first + (line.isEmpty() ? "" : " " + line)
            + (quantity.basis().isEmpty() && unit.isPresent() ? " " + unit.get().unit() : "");
    }

    private Optional<Basis> unit(CsvRow row, ColumnMeaning.Quantity quantity) {
        Optional<Basis> columnUnit = columns.spots().stream().findFirst().flatMap(TurnedColumns.SpotColumn::unit);
        List<Basis> stated = Stream.of(quantity.basis(), rowUnit(row), columnUnit, cornerUnit, rows.titleUnit())
            .flatMap(Optional::stream).distinct().toList();
        if (stated.size() > 1) {
            throw TurnedRows.refused(place(rows.kept().indexOf(row)), FaultCode.UNIT_MISSING, "one unit for "
                + quantity.element().map(Object::toString).orElse("the row"),
                stated.get(0).unit() + " and " + stated.get(1).unit());
        }
        return stated.stream().findFirst();
    }

    private Optional<Basis> rowUnit(CsvRow row) {
        OptionalInt column = columns.units();
        String text = column.isPresent() ? TurnedRows.cell(row, column.getAsInt()) : "";
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Optional<Basis> unit = UnitWords.basis(text.replaceAll("[\\[\\]()]", " "));
        if (unit.isEmpty()) {
            throw TurnedRows.refused(new Place.Cell(row.line(), column.getAsInt() + 1,
                TurnedRows.cell(rows.labels(), column.getAsInt()), text), FaultCode.UNIT_MISSING, "the unit at% or wt%",
                Spelling.quoted(text));
        }
        return unit;
    }

    @Override
    public List<String> names() {
        return names;
    }

    @Override
    public Place.Cell place(int i) {
        CsvRow row = rows.kept().get(i);
        return new Place.Cell(row.line(), 1, TurnedRows.cell(rows.labels(), 0), TurnedRows.cell(row, 0));
    }

    @Override
    public LeftOut leftOut(int i, String reason) {
        return new LeftOut.Row(rows.kept().get(i).line(), reason, TurnedRows.cell(rows.kept().get(i), 0));
    }

    @Override
    public String found(int i) {
        return "line " + rows.kept().get(i).line();
    }

    @Override
    public String part() {
        return "row";
    }

    @Override
    public Place.Cell spot(CsvRow row) {
        String label = TurnedRows.cell(rows.labels(), spot);
        return new Place.Cell(rows.labels().line(), spot + 1, label, label);
    }

    @Override
    public Place.Cell cell(CsvRow row, int i, String name, String value) {
        return new Place.Cell(rows.kept().get(i).line(), spot + 1, TurnedRows.cell(rows.labels(), spot), value);
    }
}
