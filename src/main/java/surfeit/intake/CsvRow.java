package surfeit.intake;

import java.util.List;

/** One row of a table as it was sent: the physical line on which it begins, from 1, and its cells. */
public record CsvRow(long line, List<String> cells) {
    public CsvRow {
        cells = List.copyOf(cells);
    }

    /** True where no cell says anything, and for the end mark of old systems, Ctrl-Z on a line of its own. */
    boolean isBlank() {
        if (cells.size() == 1 && cells.get(0).equals("\u001A")) {
            return true;
        }
        for (int i = 0; i < cells.size(); i++) {
            if (!CellText.isBlank(cells.get(i))) {
                return false;
            }
        }
        return true;
    }
}
