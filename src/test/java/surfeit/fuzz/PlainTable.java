package surfeit.fuzz;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A table read a second time, character by character and by none of the program's code: rows and cells as RFC 4180
 * tells them apart, with LF, CR or both at the end of a line. Ends where a quote is not closed as it should be.
 */
public final class PlainTable {
    private static final Pattern NUMBER = Pattern.compile("[+-]?([0-9]+[.,]?[0-9]*|[.,][0-9]+)([eE][+-]?[0-9]{1,2})?");

    private final String text;
    private final char delimiter;
    private final Map<Long, List<String>> rows = new HashMap<>();
    private int at;
    private long line = 1;

    private PlainTable(String text, char delimiter) {
        this.text = text;
        this.delimiter = delimiter;
    }

    public static PlainTable of(String text, char delimiter) {
        PlainTable table = new PlainTable(text, delimiter);
        while (table.at < text.length() && table.readRow()) {
            // each row goes to the map
        }
        return table;
    }

    /** The cells of the row that begins on a line; none where there is no such row. */
    public List<String> row(long number) {
        return rows.getOrDefault(number, List.of());
    }

    /** Lines on which rows begin that say something, after this line. */
    public List<Long> linesAfter(long header) {
        return rows.entrySet().stream().filter(row -> row.getKey() > header)
            .filter(row -> !row.getValue().stream().allMatch(cell -> stripped(cell).isEmpty())
                && !row.getValue().equals(List.of("\u001A")))
            .map(Map.Entry::getKey).sorted().toList();
    }

    private boolean readRow() {
        long begin = line;
        List<String> cells = new ArrayList<>();
        while (true) {
            Optional<String> cell = at < text.length() && text.charAt(at) == '"' ? quoted() : Optional.of(plain());
            if (cell.isEmpty()) {
                return false;
            }
            cells.add(cell.get());
            if (at < text.length() && text.charAt(at) == delimiter) {
                at++;
            } else if (at == text.length() || isLineEnd(text.charAt(at))) {
                takeLineEnd(new StringBuilder());
                rows.put(begin, cells);
                return true;
            } else {
                return false;
            }
        }
    }

    private String plain() {
        int from = at;
        while (at < text.length() && text.charAt(at) != delimiter && !isLineEnd(text.charAt(at))) {
            at++;
        }
        return text.substring(from, at);
    }

    private Optional<String> quoted() {
        StringBuilder cell = new StringBuilder();
        at++;
        while (at < text.length()) {
            char c = text.charAt(at);
            if (c == '"' && at + 1 < text.length() && text.charAt(at + 1) == '"') {
                cell.append(c);
                at += 2;
            } else if (c == '"') {
                at++;
                return Optional.of(cell.toString());
            } else if (isLineEnd(c)) {
                takeLineEnd(cell);
            } else {
                cell.append(c);
                at++;
            }
        }
        return Optional.empty();
    }

    private void takeLineEnd(StringBuilder kept) {
        if (at < text.length()) {
            char c = text.charAt(at++);
            kept.append(c);
            if (c == '\r' && at < text.length() && text.charAt(at) == '\n') {
                kept.append(text.charAt(at++));
            }
            line++;
        }
    }

    private static boolean isLineEnd(char c) {
        return c == '\n' || c == '\r';
    }

    /** A cell without the blanks around it; Unicode's spaces and the byte order mark are blanks. */
    public static String stripped(String cell) {
        int from = 0;
        int to = cell.length();
        while (from < to && isBlank(cell.charAt(from))) {
            from++;
        }
        while (to > from && isBlank(cell.charAt(to - 1))) {
            to--;
        }
        return cell.substring(from, to);
    }

    private static boolean isBlank(char c) {
        return c >= '\t' && c <= '\r' || c == '\uFEFF' || c != '\u001F' && Character.isSpaceChar(c);
    }

    /** The number a text says, with a point or a comma in it; empty where it says none. */
    public static Optional<BigDecimal> number(String cell) {
        String plain = stripped(cell).replace('\u2212', '-');
        return NUMBER.matcher(plain).matches()
            ? Optional.of(new BigDecimal(plain.replace(',', '.'))) : Optional.empty();
    }

    /** The fraction nearest to a number of percent, over the level an uncertainty is given at. */
    public static double fraction(BigDecimal percent, int level) {
        double fraction = percent.movePointLeft(2).doubleValue();
        return level == 1 ? fraction : fraction / level;
    }

    /** @throws AssertionError where a spreadsheet would run a cell: it begins like a formula and is no plain number */
    public static void requireHarmless(String cell) {
        String text = stripped(cell);
        boolean mayRun = !text.isEmpty() && "=+-@\uFF1D\uFF0B\uFF0D\uFF20".indexOf(text.charAt(0)) >= 0
            || !cell.isEmpty() && "\t\r\n\u0000".indexOf(cell.charAt(0)) >= 0;
        if (mayRun && number(cell).isEmpty() && !text.matches("-+")) {
            throw new AssertionError("a spreadsheet would run " + cell);
        }
    }

    /** @throws AssertionError where a spreadsheet would run any cell of a table */
    public static void requireHarmlessTable(String table) {
        PlainTable plain = of(table, ',');
        plain.rows.values().forEach(row -> row.forEach(PlainTable::requireHarmless));
    }
}
