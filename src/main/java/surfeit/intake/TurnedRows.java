package surfeit.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.element.ElementTable;
import surfeit.element.Spelling;

/**
 * What the rows of a turned table are: one of labels, those of elements and of fields of the spots, one of units, and
 * titles, notes and summaries, which are left out. Not thread-safe: one per table.
 */
final class TurnedRows {
    /** Fewer filled cells are a title, such as {@code date;24.11.2026}. Judgement. */
    private static final int TITLE_CELLS_MAX = 2;

    private final SpotIntake intake;
    private final CsvRow labels;
    private final List<CsvRow> kept = new ArrayList<>();
    private Optional<CsvRow> units = Optional.empty();
    private Optional<Basis> titleUnit = Optional.empty();

    private TurnedRows(CsvRow labels, SpotIntake intake) {
        this.labels = labels;
        this.intake = intake;
    }

    /**
     * True where the first rows can be read as a turned table only: two elements or more in the first column, each once,
     * below a row of labels. That a row is the header of an upright table is known before.
     */
    static boolean begin(List<CsvRow> rows) {
        Set<String> seen = new HashSet<>();
        Set<Element> elements = new HashSet<>();
        for (CsvRow row : rows) {
            if (isOfElement(row)) {
                ColumnMeaning.Quantity quantity = (ColumnMeaning.Quantity) ColumnReader.read(row.cells().get(0));
                elements.add(quantity.element().orElseThrow());
                if (!seen.add(quantity.element() + " " + quantity.basis() + quantity.kind() + quantity.words())) {
                    return false;
                }
            }
        }
        return elements.size() > 1 && !labelRows(rows).isEmpty();
    }

    static boolean hasLabels(List<CsvRow> rows) {
        return !labelRows(rows).isEmpty();
    }

    /** What each row is. @throws CsvRows.BrokenTableException where one is nothing that such a table has */
    static TurnedRows of(List<CsvRow> rows, SpotIntake intake) {
        List<CsvRow> candidates = labelRows(rows);
        if (candidates.size() > 1) {
            throw refused(new Place.Row(candidates.get(1).line()), FaultCode.UNREADABLE_TABLE,
                "one row of labels above the elements", "line " + candidates.get(0).line() + " and line "
                + candidates.get(1).line() + "; name the first cell of the other, such as \"particle\"");
        }
        TurnedRows sorted = new TurnedRows(candidates.get(0), intake);
        rows.forEach(sorted::sort);
        return sorted;
    }

    CsvRow labels() {
        return labels;
    }

    /** The rows of labels, fields and elements, from top to bottom. */
    List<CsvRow> kept() {
        return kept;
    }

    /** The row with the unit of each column, where there is one. */
    Optional<CsvRow> units() {
        return units;
    }

    /** The unit that a title or note says of the whole table. */
    Optional<Basis> titleUnit() {
        return titleUnit;
    }

    static boolean isOfElement(CsvRow row) {
        return row.cells().size() > 1 && ColumnReader.read(row.cells().get(0)) instanceof ColumnMeaning.Quantity quantity
            && quantity.element().isPresent() && (quantity.kind() != ColumnMeaning.Kind.UNCLEAR || filled(row) > 1);
    }

    static String cell(CsvRow row, int column) {
        return column < row.cells().size() ? CellText.strip(row.cells().get(column)) : "";
    }

    /** Rows above the elements that may name spots; of several, those with more than one name. */
    private static List<CsvRow> labelRows(List<CsvRow> rows) {
        List<CsvRow> found = new ArrayList<>();
        for (CsvRow row : rows) {
            if (isOfElement(row)) {
                break;
            }
            if (isCorner(cell(row, 0)) && row.cells().stream().skip(1).anyMatch(TurnedColumns::mayBeLabel)) {
                found.add(row);
            }
        }
        if (found.size() > 1) {
            found.removeIf(row -> filled(row) == 1);
        }
        return found;
    }

    /** True for what stands above the elements and beside the labels: nothing, "Element", "Spot", also with a unit. */
    private static boolean isCorner(String text) {
        String name = UnitAtTheEdge.of(text).name();
        ColumnMeaning meaning = ColumnReader.read(name);
        return meaning instanceof ColumnMeaning.Nameless || meaning instanceof ColumnMeaning.ElementNames
            || meaning instanceof ColumnMeaning.Field field && field.field() == SpotField.LABEL
            || SpotField.isLabelOfLastResort(name);
    }

    private static long filled(CsvRow row) {
        return row.cells().stream().filter(cell -> !CellText.isBlank(cell)).count();
    }

    private void sort(CsvRow row) {
        boolean above = !kept.contains(labels);
        String first = cell(row, 0);
        ColumnMeaning meaning = ColumnReader.read(first);
        boolean known = meaning instanceof ColumnMeaning.Field || isOfElement(row);
        if (row == labels) {
            kept.add(row);
        } else if (isOfUnits(row)) {
            takeUnits(row);
        } else if (filled(row) == 1 && !known || above && filled(row) <= TITLE_CELLS_MAX) {
            leaveOut(row, above ? "above the header" : "note");
        } else if (above && !(meaning instanceof ColumnMeaning.Field)) {
            throw refused(new Place.Row(row.line()), FaultCode.UNREADABLE_TABLE, "a title above the labels in line "
                + labels.line(), Spelling.quoted(String.join(" ", row.cells())) + "; delete the lines above it");
        } else if (!known && SummaryRows.isName(UnitAtTheEdge.of(first).name())) {
            leaveOut(row, "summary row");
        } else {
            requireName(row, first, meaning);
            kept.add(row);
        }
    }

    private static boolean isOfUnits(CsvRow row) {
        String first = cell(row, 0);
        boolean beside = isCorner(first) || SpotField.named(first).equals(Optional.of(SpotField.UNIT));
        List<String> texts = row.cells().stream().skip(1).map(CellText::strip).filter(text -> !text.isEmpty()).toList();
        return beside && !texts.isEmpty()
            && texts.stream().map(UnitAtTheEdge::of).allMatch(text -> text.unit().isPresent() && text.name().isEmpty());
    }

    private void takeUnits(CsvRow row) {
        if (units.isPresent()) {
            throw refused(new Place.Row(row.line()), FaultCode.UNREADABLE_TABLE, "one row of units",
                "line " + units.get().line() + " and line " + row.line());
        }
        units = Optional.of(row);
        intake.leaveOut(new LeftOut.Row(row.line(), "units of the columns", cell(row, 1)));
    }

    private void leaveOut(CsvRow row, String reason) {
        String text = String.join(" ", row.cells().stream().map(CellText::strip).filter(cell -> !cell.isEmpty()).toList());
        Optional<Basis> unit = SummaryRows.isName(cell(row, 0)) ? Optional.empty() : TitleUnit.of(text);
        if (unit.isPresent() && titleUnit.isPresent() && !unit.equals(titleUnit)) {
            throw refused(new Place.Row(row.line()), FaultCode.UNIT_MISSING, "one unit for the table",
                titleUnit.get().unit() + " and " + unit.get().unit());
        }
        titleUnit = unit.isPresent() ? unit : titleUnit;
        intake.leaveOut(new LeftOut.Row(row.line(), unit.isPresent() ? "unit of the table" : reason, text));
    }

    private static void requireName(CsvRow row, String first, ColumnMeaning meaning) {
        Place.Cell place = new Place.Cell(row.line(), 1, "", first);
        if (meaning instanceof ColumnMeaning.Nameless) {
            throw refused(place, FaultCode.UNREADABLE_TABLE, "the element or field that the row holds, in its first cell",
                "none");
        }
        if (meaning instanceof ColumnMeaning.ElementNames) {
            throw refused(place, FaultCode.UNREADABLE_TABLE, "one table a file",
                "a second header; send each table as a file of its own");
        }
        Optional<String> nearest = meaning instanceof ColumnMeaning.Other
            ? ElementTable.standard().nearestSymbol(first) : Optional.empty();
        if (nearest.isPresent() && (first.length() > 2 || nearest.get().equalsIgnoreCase(first))) {
            throw refused(place, FaultCode.UNKNOWN_ELEMENT, "an element symbol such as Ag",
                Spelling.quoted(first) + "; nearest known: " + nearest.get());
        }
    }

    static CsvRows.BrokenTableException refused(Place place, FaultCode code, String expected, String found) {
        return new CsvRows.BrokenTableException(Refusal.expected(code, expected, found).at(place));
    }
}
