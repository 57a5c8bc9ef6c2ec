package surfeit.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import surfeit.element.Element;
import surfeit.element.ElementTable;
import surfeit.element.Spelling;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/**
 * A long table: one element a row, the rows of one spot one below the other.
 *
 * <p>Rows belong together while label, session and time stay the same, an empty session or time meaning the one above.
 * What they say of the spot must agree. An element again with the same value is left out, with another it is a fault;
 * a fault in one row rejects the spot. Rows of a spot that come back further down refuse the whole table: the spot
 * handed on before was incomplete.
 *
 * <p>Merged cells of a spreadsheet leave the label in the first row of each spot alone. Rows without a label then belong
 * to the one above, where nothing else can be meant: see {@link MergedLabels}; not where they add up to two spots.
 */
final class LongRows extends SpotRows {
    /** Rows of a faulty spot that are held before they are handed back. Judgement: bounds memory. */
    private static final int HELD_MAX = 1_000;

    /** Totals before normalising stay well below, and two spots are above. Judgement. */
    private static final double MERGED_TOTAL_MAX = 1.5;

    private final ValueColumns value;
    private final int elementColumn;
    private final List<CsvRow> rows = new ArrayList<>();
    private final String[] texts;
    private final MergedLabels merged = new MergedLabels();
    private boolean open;
    private boolean rejected;
    private int hints;

    LongRows(TableHeader header, char delimiter, IntakeOptions options, NumberReader numbers, SpotIntake intake) {
        super(header, delimiter, options, numbers, intake, SpotPlaces.IN_ROWS);
        value = header.values().get(0);
        elementColumn = header.elementColumn().orElseThrow();
        texts = new String[fieldCount()];
    }

    @Override
    void read(CsvRow row) {
        if (isTotal(row)) {
            intake.leaveOut(new LeftOut.Row(row.line(), "total of a spot", CellText.strip(row.cells().get(elementColumn))));
            merged.total();
            return;
        }
        boolean blank = CellText.isBlank(labelOf(row));
        if (!open || !isSameSpot(row, blank && merged.mayGoOn(row))) {
            finish();
            open = true;
            startSpot();
            Arrays.fill(texts, "");
            merged.begin();
        }
        merged.row(row, blank);
        faults.next(row);
        rows.add(row);
        int before = faults.count();
        if (hasHeadersShape(row)) {
            if (merged.isMixed()) {
                faults.add(header.column(SpotField.LABEL), Refusal.expected(FaultCode.UNREADABLE_TABLE,
                    "the label in every row of a spot, or in its first row alone", "both"));
            }
            readFields();
            readElement(row);
        }
        if (faults.count() > before) {
            requireNoSecondHeader(row);
        }
        if (rows.size() >= HELD_MAX && !faults.isEmpty()) {
            handBack();
        }
    }

    @Override
    void finish() {
        if (!open) {
            return;
        }
        open = false;
        if (merged.endContradicts()) {
            intake.refuseTable(Refusal.expected(FaultCode.UNREADABLE_TABLE, "the label in every row of a spot, or two rows "
                + "or more of each spot with the label in the first", "spots of one row beside rows without a label; "
                + "write the label in every row").at(new Place.Row(merged.line())));
        }
        if (faults.isEmpty() && !rejected) {
            faults.next(rows.get(0));
            try {
                Spot spot = draft.build();
                if (merged.isOpen()) {
                    requireOneSpot(spot);
                }
                ReadSpot read = new ReadSpot(spot, new Place.Row(rows.get(0).line()), rows);
                blanks.count(read.spot());
                if (!intake.offer(read)) {
                    intake.refuseTable();
                }
            } catch (Refusal refusal) {
                faults.add(refusal);
            }
        }
        if (!faults.isEmpty() || rejected && !rows.isEmpty()) {
            handBack();
        }
        rows.clear();
        rejected = false;
    }

    /** Two spots of other elements, the second without its label. */
    private static void requireOneSpot(Spot spot) {
        double total = spot.values().values().stream().filter(ReportedValue.Measured.class::isInstance)
            .mapToDouble(value -> ((ReportedValue.Measured) value).fraction()).sum();
        if (total > MERGED_TOTAL_MAX) {
            throw Refusal.expected(FaultCode.UNREADABLE_TABLE, "one spot below its label", Math.round(100 * total)
                + " % in all below " + Spelling.quoted(spot.label()) + ", as of two; write the label in every row");
        }
    }

    private void handBack() {
        if (rejected) {
            intake.rejectMore(rows, faults.take());
        } else {
            intake.rememberRejected(draft.keyFingerprint(), rows.get(0).line());
            intake.reject(rows, faults.take());
        }
        rejected = true;
        rows.clear();
    }

    private boolean isTotal(CsvRow row) {
        return elementColumn < row.cells().size() && SummaryRows.isTotal(row.cells().get(elementColumn));
    }

    @Override
    boolean isTotalOfSpotAbove(CsvRow row) {
        return open && merged.isOpen() && CellText.isBlank(labelOf(row)) && isTotal(row);
    }

    @Override
    boolean hasMergedLabels() {
        return merged.found();
    }

    private String labelOf(CsvRow row) {
        int column = header.column(SpotField.LABEL);
        return column < row.cells().size() ? row.cells().get(column) : "";
    }

    /** @param goesOn true where a missing label means the one above */
    private boolean isSameSpot(CsvRow row, boolean goesOn) {
        for (int i = 0; i < texts.length; i++) {
            boolean isLabel = field(i) == SpotField.LABEL;
            if (isLabel || field(i) == SpotField.SESSION || field(i) == SpotField.ACQUIRED_TIME) {
                String text = fieldText(i, row);
                boolean sameAsAbove = isLabel ? goesOn : text.isEmpty() || texts[i].isEmpty();
                if (!sameAsAbove && !text.equals(texts[i])) {
                    return false;
                }
            }
        }
        return true;
    }

    private void readFields() {
        for (int i = 0; i < texts.length; i++) {
            String text = fieldText(i, faults.row());
            if (texts[i].isEmpty()) {
                texts[i] = text;
                setField(i);
            } else if (!text.isEmpty() && !text.equals(texts[i])) {
                addFieldFault(i, Refusal.expected(FaultCode.DUPLICATE_SPOT, "the same " + field(i).text()
                    + " in all rows of a spot, " + Spelling.quoted(texts[i]), Spelling.quoted(text)));
            }
        }
    }

    private void readElement(CsvRow row) {
        String symbol = CellText.strip(faults.cell(elementColumn));
        Optional<ElementText> element = ColumnReader.element(symbol);
        Optional<ReportedValue> read = value.read(faults, reader);
        if (element.isEmpty()) {
            faults.add(elementColumn, Refusal.expected(FaultCode.UNKNOWN_ELEMENT, "an element symbol such as Ag",
                Spelling.quoted(symbol) + hint(symbol)));
        } else if (read.isPresent()) {
            put(row, element.get().element(), ReportedValueReader.withLine(read.get(), element.get().line()));
        }
    }

    /** Hints stop where nobody reads them any more; looking for one takes longer than reading the row. */
    private String hint(String symbol) {
        return hints++ >= FaultList.KEPT_MAX ? ""
            : ElementTable.standard().nearestSymbol(symbol).map(nearest -> "; nearest known: " + nearest).orElse("");
    }

    private void put(CsvRow row, Element element, ReportedValue read) {
        Optional<ReportedValue> earlier = draft.value(element);
        if (earlier.isEmpty()) {
            try {
                draft.put(element, read);
            } catch (Refusal refusal) {
                faults.add(elementColumn, refusal);
            }
        } else if (merged.isOpen()) {
            faults.add(elementColumn, Refusal.expected(FaultCode.DUPLICATE_SPOT, "every element of a spot once",
                element + " again in a row without a label; write the label in every row"));
        } else if (SpotFingerprint.ofValue(earlier.get()) == SpotFingerprint.ofValue(read)) {
            rows.remove(rows.size() - 1);
            intake.leaveOut(new LeftOut.Row(row.line(), "the same element of the same spot with the same value again",
                CellText.strip(faults.cell(header.column(SpotField.LABEL)))));
        } else {
            faults.add(elementColumn, Refusal.expected(FaultCode.DUPLICATE_SPOT, "every element of a spot once",
                element + " again with another value"));
        }
    }
}
