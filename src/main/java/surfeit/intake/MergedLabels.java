package surfeit.intake;

/**
 * Whether rows of a long table without a label belong to the spot above, as merged cells of a spreadsheet leave them.
 *
 * <p>They do where the first row of the spot has a label and all others have none, line below line, and no total stands
 * between. The elements of a spot must then differ, or a label is missing; and no spot may have one row only beside
 * others with such rows, as sorting the rows would leave it. Else nobody can tell whose they are. Not thread-safe: one
 * per table.
 */
final class MergedLabels {
    private int rows;
    private int blanks;
    private long line;
    private boolean afterTotal;
    private boolean mixed;
    private boolean anyMerged;
    private boolean anySingle;
    private boolean told;

    /** True where a row without a label may belong to the spot that is open. */
    boolean mayGoOn(CsvRow row) {
        return rows > 0 && blanks == rows - 1 && row.line() == line + 1 && !afterTotal;
    }

    /** Another spot begins. */
    void begin() {
        rows = 0;
        blanks = 0;
        afterTotal = false;
        mixed = false;
    }

    /** A row of the spot that is open. */
    void row(CsvRow row, boolean blank) {
        mixed = !blank && blanks > 0;
        rows++;
        blanks += blank ? 1 : 0;
        line = row.line();
    }

    /** A total stands below the spot. */
    void total() {
        afterTotal = true;
    }

    /** True where a label comes again after rows without it. */
    boolean isMixed() {
        return mixed;
    }

    /** True where the spot that is open has rows without a label below one with it. */
    boolean isOpen() {
        return blanks > 0 && blanks < rows;
    }

    /** Ends the spot; true, once, where spots of one row stand beside spots whose rows have no label. */
    boolean endContradicts() {
        anyMerged |= isOpen();
        anySingle |= rows == 1 && blanks == 0;
        boolean contradicts = anyMerged && anySingle && !told;
        told |= contradicts;
        return contradicts;
    }

    /** Line of the last row. */
    long line() {
        return line;
    }

    /** True where any spot of the table had such rows. */
    boolean found() {
        return anyMerged;
    }
}
