package surfeit.calibration;

import java.util.ArrayList;
import java.util.List;

/** Every cell of the benchmark, in the order of the table. A new kind of answer adds its list here. */
final class Cells {
    private Cells() {
    }

    static List<Cell> all() {
        List<Cell> cells = new ArrayList<>(GridCells.all());
        cells.addAll(ReferenceCells.all());
        cells.addAll(ContrastCells.all());
        cells.addAll(ComparisonCells.all());
        cells.addAll(MinorCells.all());
        cells.addAll(OtherCells.sessions());
        cells.addAll(OtherCells.broken());
        cells.addAll(OtherCells.reliability());
        return cells;
    }
}
