package surfeit.intake;

/** Where a spot and its cells stand: in a row, or in a column where the table is turned. */
interface SpotPlaces {
    /** One spot a row. */
    SpotPlaces IN_ROWS = new SpotPlaces() {
        @Override
        public Place spot(CsvRow row) {
            return new Place.Row(row.line());
        }

        @Override
        public Place.Cell cell(CsvRow row, int i, String name, String value) {
            return new Place.Cell(row.line(), i + 1, name, value);
        }
    };

    /** Where the spot stands that a row holds. */
    Place spot(CsvRow row);

    /** Where its cell with an index from 0 stands. */
    Place.Cell cell(CsvRow row, int i, String name, String value);
}
