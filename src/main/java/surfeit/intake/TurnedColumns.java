package surfeit.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import surfeit.composition.Basis;
import surfeit.element.Spelling;

/**
 * What the columns of a turned table hold: one spot each; one of units or of X-ray lines; means and the like at the
 * right end, which are left out. A column that is anything else refuses the table. Not thread-safe: one per table.
 */
final class TurnedColumns {
    /** Names of columns that hold one number an element, but no spot. English and German, common practice, no source. */
    private static final Set<String> NO_LABELS = Set.of("wert", "werte", "gehalt", "anteil", "konzentration", "konz",
        "fehler", "error", "err", "abweichung", "differenz", "difference", "deviation", "delta", "diff", "intensit\u00E4t",
        "intensitaet", "intensity", "int", "counts", "cps", "z", "oz", "an", "atomicnumber", "ordnungszahl", "kratio",
        "k", "zaf", "unit", "einheit", "percent", "prozent", "name", "s", "n");
    private static final Set<String> LINES = Set.of("line", "lines", "xrayline", "series", "serie", "linie", "linien",
        "r\u00F6ntgenlinie", "shell", "schale");

    /**
     * One spot.
     *
     * @param column index of its column
     * @param label  above it, without a unit
     */
    record SpotColumn(int column, String label, Optional<Basis> unit) {
    }

    private final TurnedRows rows;
    private final SpotIntake intake;
    private final Optional<Basis> stated;
    private final List<SpotColumn> spots = new ArrayList<>();
    private int width = 1;
    private OptionalInt summary = OptionalInt.empty();
    private OptionalInt units = OptionalInt.empty();
    private OptionalInt lines = OptionalInt.empty();

    private TurnedColumns(TurnedRows rows, Optional<Basis> stated, SpotIntake intake) {
        this.rows = rows;
        this.stated = stated;
        this.intake = intake;
    }

    static TurnedColumns of(TurnedRows rows, Optional<Basis> stated, SpotIntake intake) {
        TurnedColumns columns = new TurnedColumns(rows, stated, intake);
        for (int column = 1; column < rows.labels().cells().size(); column++) {
            columns.read(column);
        }
        columns.requireNothingBeside();
        columns.takeOneUnit();
        return columns;
    }

    /** True for a text that may be the label of a spot: no field, element, unit, summary or other number of an element. */
    static boolean mayBeLabel(String text) {
        String name = UnitAtTheEdge.of(text).name();
        ColumnMeaning meaning = ColumnReader.read(name);
        return meaning instanceof ColumnMeaning.Other && !SummaryRows.isName(name) && !NO_LABELS.contains(letters(name))
            && !LINES.contains(letters(name)) && !BesideWords.areAllOf(name);
    }

    /** How many columns hold anything. */
    int width() {
        return width;
    }

    List<SpotColumn> spots() {
        return spots;
    }

    /** The column with the unit of each row. */
    OptionalInt units() {
        return units;
    }

    /** The column with the X-ray line of each row. */
    OptionalInt lines() {
        return lines;
    }

    private void read(int column) {
        String text = TurnedRows.cell(rows.labels(), column);
        Optional<Basis> above = rows.units().flatMap(row -> UnitAtTheEdge.of(TurnedRows.cell(row, column)).unit());
        if (text.isEmpty()) {
            readUnnamed(column, above);
            return;
        }
        width = column + 1;
        String bare = UnitAtTheEdge.of(text).name();
        ColumnMeaning meaning = ColumnReader.read(text);
        if (meaning instanceof ColumnMeaning.Field field && field.field() == SpotField.UNIT && units.isEmpty()) {
            units = OptionalInt.of(column);
        } else if (LINES.contains(letters(text)) && lines.isEmpty()) {
            lines = OptionalInt.of(column);
        } else if (isOfAtomicNumbers(column)) {
            leaveOut(column, "the atomic numbers");
        } else if (SummaryRows.isNominal(bare)) {
            leaveOut(column, "the nominal composition, no spot");
        } else if (summary.isPresent() && NO_LABELS.contains(letters(bare))) {
            leaveOut(column, "summary column");
        } else if (SummaryRows.isName(bare)) {
            summary = summary.isPresent() ? summary : OptionalInt.of(column);
            leaveOut(column, "summary column");
        } else if (!mayBeLabel(text)) {
            throw refused(column, "the label of a spot above each column but the first", Spelling.quoted(text)
                + "; if it is a label, give the spot another one, else delete the column"
                + (BesideWords.areAllOf(bare) ? "; an uncertainty may stand in a row such as \"Ag u\"" : ""));
        } else if (holdsNoValues(column)) {
            leaveOut(column, "holds no values");
        } else {
            requireNoSummaryBefore(column, text);
            UnitAtTheEdge name = UnitAtTheEdge.of(text);
            if (name.unit().isPresent() && above.isPresent() && !name.unit().equals(above)) {
                throw refused(column, FaultCode.UNIT_MISSING, "one unit for " + Spelling.quoted(name.name()),
                    name.unit().get().unit() + " and " + above.get().unit());
            }
            spots.add(new SpotColumn(column, name.name(), name.unit().or(() -> above)));
        }
    }

    /** Merged cells leave a label over the first of its columns: it holds for the next where that is in another unit. */
    private void readUnnamed(int column, Optional<Basis> above) {
        if (rows.kept().stream().allMatch(row -> TurnedRows.cell(row, column).isEmpty())) {
            return;
        }
        Optional<SpotColumn> before = spots.stream().filter(spot -> spot.column() == column - 1).findFirst();
        if (above.isEmpty() || before.isEmpty() || before.get().unit().equals(above)
            || TurnedRows.cell(rows.labels(), column - 1).isEmpty()) {
            throw refused(column, FaultCode.NAME_INVALID, "the label of a spot above its column", "none");
        }
        width = column + 1;
        spots.add(new SpotColumn(column, before.get().label(), above));
    }

    private void requireNoSummaryBefore(int column, String text) {
        if (summary.isPresent()) {
            String name = TurnedRows.cell(rows.labels(), summary.getAsInt());
            throw refused(summary.getAsInt(), "columns of means and the like right of all spots", Spelling.quoted(name)
                + " left of " + Spelling.quoted(text) + "; if it is a spot, give it another label; an uncertainty may stand "
                + "in a row such as \"Ag u\"");
        }
    }

    private void requireNothingBeside() {
        Set<List<String>> labels = new HashSet<>();
        spots.forEach(spot -> labels.add(BesideWords.words(spot.label())));
        for (SpotColumn spot : spots) {
            if (BesideWords.without(spot.label()).filter(labels::contains).isPresent()) {
                throw refused(spot.column(), "one column a spot", Spelling.quoted(spot.label())
                    + "; an uncertainty may stand in a row such as \"Ag u\", all others in a wide table");
            }
        }
    }

    /** Where columns state a unit, all do; of two, the stated one is taken. */
    private void takeOneUnit() {
        Set<Basis> found = Set.copyOf(spots.stream().flatMap(spot -> spot.unit().stream()).toList());
        if (found.isEmpty()) {
            return;
        }
        for (SpotColumn spot : spots) {
            if (spot.unit().isEmpty()) {
                throw refused(spot.column(), FaultCode.UNIT_MISSING, "the unit of " + Spelling.quoted(spot.label())
                    + ", at% or wt%, as of the other columns", "none");
            }
        }
        if (found.size() > 1 && stated.isEmpty()) {
            SpotColumn other = spots.stream().filter(spot -> !spot.unit().equals(spots.get(0).unit())).findFirst()
                .orElseThrow();
            throw refused(other.column(), FaultCode.UNIT_MISSING, "one unit for all spots",
                spots.get(0).unit().orElseThrow().unit() + " and " + other.unit().orElseThrow().unit()
                + "; state the unit to take");
        }
        if (found.size() > 1) {
            spots.stream().filter(spot -> !spot.unit().equals(stated)).forEach(spot -> leaveOut(spot.column(),
                "in " + spot.unit().orElseThrow().unit() + ", " + stated.get().unit() + " was stated"));
            spots.removeIf(spot -> !spot.unit().equals(stated));
        }
    }

    private boolean isOfAtomicNumbers(int column) {
        return rows.kept().stream().filter(TurnedRows::isOfElement).allMatch(row ->
            ColumnReader.read(row.cells().get(0)) instanceof ColumnMeaning.Quantity quantity
                && TurnedRows.cell(row, column).equals(String.valueOf(quantity.element().orElseThrow().atomicNumber())));
    }

    /** Words in every row: a remark. A label over nothing but blanks stays a spot, which then lacks its values. */
    private boolean holdsNoValues(int column) {
        List<String> cells = rows.kept().stream().filter(TurnedRows::isOfElement)
            .map(row -> TurnedRows.cell(row, column)).filter(cell -> !cell.isEmpty()).toList();
        return !cells.isEmpty() && cells.stream().noneMatch(cell -> cell.chars().anyMatch(Character::isDigit)
            || ReportedValueReader.isWord(cell));
    }

    private void leaveOut(int column, String reason) {
        intake.leaveOut(new LeftOut.Column(column + 1, TurnedRows.cell(rows.labels(), column), reason));
    }

    private CsvRows.BrokenTableException refused(int column, String expected, String found) {
        return refused(column, FaultCode.UNREADABLE_TABLE, expected, found);
    }

    private CsvRows.BrokenTableException refused(int column, FaultCode code, String expected, String found) {
        String text = TurnedRows.cell(rows.labels(), column);
        return TurnedRows.refused(new Place.Cell(rows.labels().line(), column + 1, text, text), code, expected, found);
    }

    private static String letters(String text) {
        StringBuilder letters = new StringBuilder();
        text.toLowerCase(Locale.ROOT).chars().filter(Character::isLetterOrDigit).forEach(c -> letters.append((char) c));
        return letters.toString();
    }
}
