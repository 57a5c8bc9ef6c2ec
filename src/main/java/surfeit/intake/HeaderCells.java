package surfeit.intake;

import java.util.List;

/** The cells that name what a table's columns hold, or its rows where the table is turned, and how each is told of. */
interface HeaderCells {

    /** The names, one a column; one a row where the table is turned. */
    List<String> names();

    /** Where a name stands, by index from 0. */
    Place.Cell place(int i);

    /** Lists what stands under a name, or beside it, as left out. */
    LeftOut leftOut(int i, String reason);

    /** How a reader finds it: {@code column 3}, or {@code line 3} where the table is turned. */
    String found(int i);

    /** {@code column} or {@code row}. */
    String part();

    /** The header of an upright table: a row. */
    record OfColumns(CsvRow row) implements HeaderCells {
        @Override
        public List<String> names() {
            return row.cells();
        }

        @Override
        public Place.Cell place(int i) {
            return new Place.Cell(row.line(), i + 1, row.cells().get(i), row.cells().get(i));
        }

        @Override
        public LeftOut leftOut(int i, String reason) {
            return new LeftOut.Column(i + 1, row.cells().get(i), reason);
        }

        @Override
        public String found(int i) {
            return "column " + (i + 1);
        }

        @Override
        public String part() {
            return "column";
        }
    }
}
