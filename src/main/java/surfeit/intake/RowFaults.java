package surfeit.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The row that is being read, by column index from 0, and what is wrong with it. Not thread-safe. */
final class RowFaults {
    private final TableHeader header;
    private final SpotPlaces places;
    private final List<Fault> faults = new ArrayList<>();
    private final Map<Integer, Long> notKept = new TreeMap<>();
    private CsvRow row = new CsvRow(0, List.of());

    RowFaults(TableHeader header, SpotPlaces places) {
        this.header = header;
        this.places = places;
    }

    /** Goes on to another row; the faults of earlier ones stay until {@link #take}. */
    void next(CsvRow following) {
        row = following;
    }

    CsvRow row() {
        return row;
    }

    String cell(int column) {
        return row.cells().get(column);
    }

    /** True where there is such a column and this row says something in it. */
    boolean has(int column) {
        return column >= 0 && !CellText.isBlank(row.cells().get(column));
    }

    /** Adds a refusal of one cell, or of one that is missing at the end of the row. */
    void add(int column, Refusal refusal) {
        String value = column < row.cells().size() ? cell(column) : "";
        faults.add(refusal.at(places.cell(row, column, header.name(column), value)));
    }

    /** Adds a refusal of the row as a whole, at the column of its field where it has one. */
    void add(Refusal refusal) {
        int column = refusal.field().map(header::column).orElse(-1);
        if (column >= 0) {
            add(column, refusal);
        } else {
            faults.add(refusal.at(places.spot(row)));
        }
    }

    /** Counts a cell that says something its value cannot keep. */
    void countNotKept(int column) {
        notKept.merge(column, 1L, Long::sum);
    }

    /** How many cells of a column said what their values cannot keep. */
    Map<Integer, Long> notKept() {
        return notKept;
    }

    int count() {
        return faults.size();
    }

    boolean isEmpty() {
        return faults.isEmpty();
    }

    /** Hands the faults over and starts with none. */
    List<Fault> take() {
        List<Fault> taken = List.copyOf(faults);
        faults.clear();
        return taken;
    }
}
