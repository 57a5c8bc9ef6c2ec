package surfeit.intake;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import surfeit.composition.Basis;
import surfeit.element.Spelling;

/**
 * Finds where a table begins: in its first row, or below a title of at most {@link #ROWS_MAX} rows.
 *
 * <p>A row is a header by naming spots and elements. Rows above it are left out and told, unless one holds numbers: those
 * may be spots of a table without a header. Units may stand in a row of their own, above or below the names.
 */
final class HeaderSearch {
    /** Rows looked at for a header that does not come first. Judgement. */
    static final int ROWS_MAX = 20;

    private final CsvRows rows;
    private final SpotIntake intake;
    private final Deque<CsvRow> ahead = new ArrayDeque<>();
    private Optional<CsvRows.BrokenTableException> broken = Optional.empty();

    HeaderSearch(CsvRows rows, SpotIntake intake) {
        this.rows = rows;
        this.intake = intake;
    }

    /** The next row that is not blank, those looked at before first. @throws CsvRows.BrokenTableException */
    Optional<CsvRow> next() {
        if (ahead.isEmpty() && broken.isPresent()) {
            throw broken.get();
        }
        return ahead.isEmpty() ? rows.next() : Optional.of(ahead.remove());
    }

    /**
     * The row of names, with the units of a row of their own written into it; empty where the elements stand one below
     * the other instead, and then {@link #next} begins with the first row. @throws CsvRows.BrokenTableException
     */
    Optional<CsvRow> header() {
        List<CsvRow> above = new ArrayList<>();
        CsvRow first = next().orElseThrow(() ->
            Refusal.expected(FaultCode.UNREADABLE_TABLE, "a header and rows of spots", "an empty table"));
        CsvRow names = first;
        if (!TableHeader.isComplete(first.cells())) {
            Optional<CsvRow> below = below(first, above);
            names = below.orElse(first);
            if (below.isEmpty()) {
                above.clear();
                if (isTurned(first)) {
                    ahead.addFirst(first);
                    return Optional.empty();
                }
                requireSomeHeader(first);
            } else {
                requireNoSpots(above, names);
            }
        }
        CsvRow header = withUnits(names, above);
        requireOneReading(header);
        return Optional.of(header);
    }

    /** Elements above and in the first column, which has no name: labels such as B and C may stand above a turned table. */
    private void requireOneReading(CsvRow header) {
        List<ColumnMeaning.Quantity> elements = header.cells().stream().map(ColumnReader::read)
            .filter(ColumnMeaning.Quantity.class::isInstance).map(ColumnMeaning.Quantity.class::cast).toList();
        if (!CellText.isBlank(header.cells().get(0)) || elements.stream().anyMatch(one -> one.basis().isPresent())) {
            return;
        }
        while (ahead.size() < 2 && broken.isEmpty()) {
            Optional<CsvRow> row = rows.next();
            if (row.isEmpty()) {
                return;
            }
            ahead.add(row.get());
        }
        if (ahead.stream().limit(2).filter(TurnedRows::isOfElement).count() == 2) {
            throw new CsvRows.BrokenTableException(Refusal.expected(FaultCode.UNREADABLE_TABLE,
                "elements in the header or in the first column", "both; name the first column \"label\" if its texts are "
                + "labels, else \"Element\", and give spots labels that are no elements").at(new Place.Row(header.line())));
        }
    }

    /** Looks for a header below the first row; where there is none, all rows are read again. */
    private Optional<CsvRow> below(CsvRow first, List<CsvRow> above) {
        above.add(first);
        try {
            while (above.size() <= ROWS_MAX) {
                Optional<CsvRow> row = rows.next();
                if (row.isEmpty()) {
                    break;
                }
                if (TableHeader.isComplete(row.get().cells()) && numbers(row.get()) == 0) {
                    return row;
                }
                above.add(row.get());
            }
        } catch (CsvRows.BrokenTableException e) {
            // without a header no row can be read; that the first one is none is told first
            broken = Optional.of(e);
        }
        ahead.addAll(above.subList(1, above.size()));
        return Optional.empty();
    }

    private CsvRow withUnits(CsvRow names, List<CsvRow> above) {
        Optional<CsvRow> units = above.isEmpty() ? Optional.empty() : Optional.of(above.get(above.size() - 1));
        Optional<CsvRow> joined = units.flatMap(row -> UnitRow.above(names, row));
        joined.ifPresent(row -> above.remove(above.size() - 1));
        if (joined.isEmpty()) {
            units = rowBelow();
            joined = units.flatMap(row -> UnitRow.below(names, row));
            joined.ifPresent(row -> ahead.remove());
        }
        Optional<CsvRow> titled = joined.isPresent() ? Optional.empty() : withTitleUnit(names, above);
        above.forEach(row -> intake.leaveOut(new LeftOut.Row(row.line(), titled.isPresent() && titleUnit(row).isPresent()
            ? "unit of the table" : "above the header", text(row))));
        if (joined.isPresent()) {
            units.ifPresent(row -> intake.leaveOut(new LeftOut.Row(row.line(), "units of the columns", text(row))));
        }
        return joined.or(() -> titled).orElse(names);
    }

    /** The names with the unit that titles state, where no name states one and titles agree. */
    private static Optional<CsvRow> withTitleUnit(CsvRow names, List<CsvRow> above) {
        List<Basis> units = above.stream().flatMap(row -> titleUnit(row).stream()).distinct().toList();
        boolean stated = names.cells().stream().map(ColumnReader::read).anyMatch(meaning ->
            meaning instanceof ColumnMeaning.Quantity quantity && quantity.basis().isPresent()
            || meaning instanceof ColumnMeaning.Field field && field.field() == SpotField.UNIT);
        if (units.size() != 1 || stated) {
            return Optional.empty();
        }
        List<String> cells = names.cells().stream().map(cell -> isBareValue(cell) ? cell + " " + units.get(0).unit() : cell)
            .toList();
        return Optional.of(new CsvRow(names.line(), cells));
    }

    private static boolean isBareValue(String name) {
        return ColumnReader.read(name) instanceof ColumnMeaning.Quantity quantity && quantity.element().isPresent()
            && quantity.basis().isEmpty() && quantity.kind() == ColumnMeaning.Kind.VALUE;
    }

    private static Optional<Basis> titleUnit(CsvRow row) {
        return TitleUnit.of(String.join(" ", row.cells()).strip());
    }

    private Optional<CsvRow> rowBelow() {
        if (ahead.isEmpty() && broken.isEmpty()) {
            rows.next().ifPresent(ahead::add);
        }
        return Optional.ofNullable(ahead.peek());
    }

    private static void requireNoSpots(List<CsvRow> above, CsvRow names) {
        for (CsvRow row : above) {
            if (mayBeSpot(row)) {
                throw noHeader(row, "; line " + names.line() + " looks like the header, delete the lines above it");
            }
        }
    }

    private void requireSomeHeader(CsvRow first) {
        if (DelimiterChoice.meaningful(first.cells()) < 2) {
            broken.filter(known -> known.fault().setting().isPresent()).ifPresent(known -> {
                throw known;
            });
            List<CsvRow> start = new ArrayList<>(List.of(first));
            start.addAll(ahead);
            throw noHeader(first, HeaderHints.of(start));
        }
    }

    private boolean isTurned(CsvRow first) {
        List<CsvRow> start = new ArrayList<>(List.of(first));
        start.addAll(ahead);
        return TurnedRows.begin(start);
    }

    private static CsvRows.BrokenTableException noHeader(CsvRow row, String hint) {
        Refusal refusal = Refusal.expected(FaultCode.UNREADABLE_TABLE, "a header such as \"label;particle;Ag at%;Cu at%\"",
            Spelling.quoted(String.join(" ", row.cells())) + hint);
        return new CsvRows.BrokenTableException(refusal.at(new Place.Row(row.line())));
    }

    /** True for a row of several numbers, or of a number beside more than its name. Judgement. */
    private static boolean mayBeSpot(CsvRow row) {
        long filled = row.cells().stream().filter(cell -> !CellText.isBlank(cell)).count();
        return numbers(row) > 1 || numbers(row) == 1 && filled > 2;
    }

    private static long numbers(CsvRow row) {
        return row.cells().stream().filter(cell -> PrintedNumber.isPlain(CellText.strip(cell))).count();
    }

    private static String text(CsvRow row) {
        return CellText.strip(row.cells().stream().filter(cell -> !CellText.isBlank(cell)).findFirst().orElse(""));
    }
}
