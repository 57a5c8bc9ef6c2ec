package surfeit.intake;

import java.util.List;
import java.util.stream.Collectors;
import surfeit.spot.FormulaGuard;

/**
 * Gives the rows that became no spot back as the same table, with one column more that says why; the spots of a turned
 * table as rows of a wide one.
 *
 * <p>Cells are as they were sent, but for an apostrophe before words that a spreadsheet would run as a formula; numbers
 * stay numbers. The mended table can be sent as it is: the column {@code problem} is then left out. Lines end with LF.
 * Immutable, thread-safe.
 */
public record RejectedTable(TableHead head) {
    /** Name of the added column. */
    public static final String PROBLEM_COLUMN = "problem";

    /** The header with its line end. */
    public String header() {
        return line(head.names(), PROBLEM_COLUMN);
    }

    /** The rows of one rejected spot with their line ends. */
    public String lines(RejectedSpot rejected) {
        StringBuilder lines = new StringBuilder();
        for (CsvRow row : rejected.rows()) {
            lines.append(line(row.cells(), rejected.rows().size() == 1 ? all(rejected.faults())
                : problem(row, rejected.faults())));
        }
        return lines.toString();
    }

    private static String all(List<Fault> faults) {
        return faults.stream().map(RejectedTable::problem).collect(Collectors.joining(" "));
    }

    private static String problem(Fault fault) {
        return fault.code().text() + ": " + fault.detail();
    }

    private static String problem(CsvRow row, List<Fault> faults) {
        StringBuilder text = new StringBuilder();
        for (Fault fault : faults) {
            if (lineOf(fault) == row.line()) {
                text.append(text.isEmpty() ? "" : " ").append(problem(fault));
            }
        }
        return text.isEmpty() && !faults.isEmpty()
            ? "another row of this spot, line " + lineOf(faults.get(0)) + ", has a problem" : text.toString();
    }

    private static long lineOf(Fault fault) {
        return fault.place() instanceof Place.Cell cell ? cell.line()
            : fault.place() instanceof Place.Row row ? row.line() : 0;
    }

    private String line(List<String> cells, String problem) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < Math.max(cells.size(), head.names().size()); i++) {
            line.append(quoted(i < cells.size() ? safe(i, cells.get(i)) : "")).append(head.delimiter());
        }
        return line.append(quoted(problem)).append('\n').toString();
    }

    private String safe(int column, String cell) {
        boolean number = PrintedNumber.isPlain(CellText.strip(cell)) || cell.chars().allMatch(c -> c == '-');
        return number && !head.wordColumns().contains(column) ? cell : FormulaGuard.guarded(cell);
    }

    private String quoted(String cell) {
        boolean needed = false;
        for (int i = 0; i < cell.length() && !needed; i++) {
            char c = cell.charAt(i);
            needed = c == head.delimiter() || c == '"' || c == '\n' || c == '\r';
        }
        return needed ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
    }
}
