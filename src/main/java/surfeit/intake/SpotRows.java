package surfeit.intake;

import java.util.List;
import java.util.Map;
import surfeit.element.Spelling;
import surfeit.spot.FormulaGuard;

/** Makes spots of a table's rows; what wide and long tables have in common. Not thread-safe: one per upload. */
abstract class SpotRows {
    final TableHeader header;
    final SpotIntake intake;
    final SpotDraft draft;
    final ReportedValueReader reader;
    final RowFaults faults;
    final BlankFields blanks = new BlankFields();
    private final SpotField[] fields;
    private final int[] fieldColumns;
    private final char delimiter;

    SpotRows(TableHeader header, char delimiter, IntakeOptions options, NumberReader numbers, SpotIntake intake,
             SpotPlaces places) {
        this.header = header;
        this.intake = intake;
        this.delimiter = delimiter;
        this.draft = new SpotDraft(options, numbers);
        this.reader = new ReportedValueReader(numbers, options.uLevel());
        this.faults = new RowFaults(header, places);
        List<Map.Entry<SpotField, Integer>> entries = List.copyOf(header.fields().entrySet());
        this.fields = entries.stream().map(Map.Entry::getKey).toArray(SpotField[]::new);
        this.fieldColumns = entries.stream().mapToInt(Map.Entry::getValue).toArray();
    }

    /** Reads one row that is not blank and no summary. */
    abstract void read(CsvRow row);

    /** Reads what is left when the rows are at their end. */
    abstract void finish();

    /** Tells, at the table's end, what stood in its columns and is in no spot. */
    void tell(HeaderCells cells) {
        blanks.tell(cells, header, intake);
        faults.notKept().forEach((column, count) -> intake.leaveOut(cells.leftOut(column,
            "stands beside a value that is no number, " + count + (count == 1 ? " time" : " times"))));
    }

    /** True for a row that is the total of the spot above it, though it does not name that spot. */
    boolean isTotalOfSpotAbove(CsvRow row) {
        return false;
    }

    /** True where rows without a label were taken for rows of the spot above. */
    boolean hasMergedLabels() {
        return false;
    }

    int fieldCount() {
        return fields.length;
    }

    SpotField field(int i) {
        return fields[i];
    }

    /** What a row says of a field; nothing where the row ends before. */
    String fieldText(int i, CsvRow row) {
        if (fieldColumns[i] >= row.cells().size()) {
            return "";
        }
        String text = CellText.strip(row.cells().get(fieldColumns[i]));
        return fields[i].holdsWords() ? Spelling.composed(CellText.strip(FormulaGuard.undone(text))) : text;
    }

    void setField(int i) {
        try {
            draft.set(fields[i], fieldText(i, faults.row()));
        } catch (Refusal refusal) {
            faults.add(fieldColumns[i], refusal);
        }
    }

    void addFieldFault(int i, Refusal refusal) {
        faults.add(fieldColumns[i], refusal);
    }

    /** Readies the draft for another spot; a unit of the header holds for all. */
    void startSpot() {
        draft.clear();
        header.basis().ifPresent(draft::unit);
    }

    /** True where the row has as many columns as the header; else its fault is told. */
    boolean hasHeadersShape(CsvRow row) {
        int expected = header.names().size();
        int found = row.cells().size();
        if (found < expected) {
            faults.add(found, Refusal.expected(FaultCode.UNREADABLE_TABLE, expected + " columns as in the header",
                found));
            return false;
        }
        for (int i = expected; i < found; i++) {
            if (!CellText.isBlank(row.cells().get(i))) {
                String hint = delimiter == ',' ? "; numbers with a decimal comma need quotes or another delimiter" : "";
                faults.add(i, Refusal.expected(FaultCode.UNREADABLE_TABLE, expected + " columns as in the header",
                    found + hint));
                return false;
            }
        }
        for (int i : header.nameless()) {
            if (i < found && !CellText.isBlank(row.cells().get(i))) {
                faults.add(i, Refusal.expected(FaultCode.UNREADABLE_TABLE,
                    "an empty cell in a column without a name", Spelling.quoted(row.cells().get(i))));
                return false;
            }
        }
        return true;
    }

    /** Ends the reading where a faulty row is another header: what follows belongs to other columns. */
    static void requireNoSecondHeader(CsvRow row) {
        if (TableHeader.looksLikeHeader(row.cells())) {
            throw new CsvRows.BrokenTableException(new Fault(FaultCode.UNREADABLE_TABLE,
                "Expected one table a file, found a second header; send each table as a file of its own.",
                new Place.Row(row.line())));
        }
    }
}
