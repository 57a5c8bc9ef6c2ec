package surfeit.intake;

import java.util.List;
import java.util.Optional;
import surfeit.element.Element;
import surfeit.element.Spelling;
import surfeit.spot.ReportedValue;

/** A wide table: one spot a row, one column or more an element. */
final class WideRows extends SpotRows {
    private final ValueColumns[] values;
    private final Element[] elements;
    private final SpotPlaces places;
    private String labelAbove = "";

    WideRows(TableHeader header, char delimiter, IntakeOptions options, NumberReader numbers, SpotIntake intake) {
        this(header, delimiter, options, numbers, intake, SpotPlaces.IN_ROWS);
    }

    /** @param places where the cells stand that a row holds */
    WideRows(TableHeader header, char delimiter, IntakeOptions options, NumberReader numbers, SpotIntake intake,
             SpotPlaces places) {
        super(header, delimiter, options, numbers, intake, places);
        this.places = places;
        values = header.values().toArray(ValueColumns[]::new);
        elements = header.values().stream().flatMap(columns -> columns.element().stream()).toArray(Element[]::new);
    }

    @Override
    void read(CsvRow row) {
        faults.next(row);
        startSpot();
        if (hasHeadersShape(row)) {
            for (int i = 0; i < fieldCount(); i++) {
                setField(i);
            }
            for (int i = 0; i < values.length; i++) {
                Optional<ReportedValue> value = values[i].read(faults, reader);
                if (value.isPresent()) {
                    draft.put(elements[i], value.get());
                }
            }
        }
        if (faults.isEmpty()) {
            try {
                ReadSpot read = new ReadSpot(draft.build(), places.spot(row), List.of(row));
                requireSpot(read.spot().label());
                blanks.count(read.spot());
                intake.offer(read);
                return;
            } catch (Refusal refusal) {
                boolean words = SummaryRows.note(row.cells()).isPresent();
                faults.add(words ? new Refusal(refusal.code(), refusal.getMessage().replaceFirst("\\.$",
                    "; if the row is a note, leave a line blank above it.")) : refusal);
            }
        }
        requireNoSecondHeader(row);
        intake.reject(List.of(row), faults.take());
    }

    private void requireSpot(String label) {
        if (!labelAbove.isEmpty() && BesideWords.areBelow(labelAbove, label)) {
            throw Refusal.expected(FaultCode.UNREADABLE_TABLE, "one row a spot", Spelling.quoted(label) + " below "
                + Spelling.quoted(labelAbove) + "; an uncertainty may stand in a column such as \"Ag at% u\"; if it is a "
                + "spot, give it another label");
        }
        labelAbove = label;
    }

    @Override
    void finish() {
        // every row is a spot of its own; nothing is left open
    }
}
