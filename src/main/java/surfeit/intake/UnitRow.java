package surfeit.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.composition.Basis;
import surfeit.element.Element;

/** A row that holds the units of the columns named in the row below or above it; their names are then joined with them. */
final class UnitRow {
    private UnitRow() {
    }

    /** Names with the units of the row below them; empty where that row holds anything else under the elements. */
    static Optional<CsvRow> below(CsvRow names, CsvRow units) {
        return joined(names, units.cells());
    }

    /**
     * Names with the units of the row above them. Merged cells leave a unit over the first of its columns: it holds for
     * those after it where two units or more stand over the same elements each, else for its own column alone.
     */
    static Optional<CsvRow> above(CsvRow names, CsvRow units) {
        return joined(names, isOverTheSameElements(names, units) ? spread(names, units) : units.cells());
    }

    private static Optional<CsvRow> joined(CsvRow names, List<String> units) {
        List<String> cells = new ArrayList<>(names.cells());
        boolean any = false;
        for (int i = 0; i < units.size(); i++) {
            String text = CellText.strip(units.get(i));
            if (text.isEmpty()) {
                continue;
            }
            if (i >= cells.size() || PrintedNumber.isPlain(text)) {
                return Optional.empty();
            }
            if (ColumnReader.read(cells.get(i)) instanceof ColumnMeaning.Quantity quantity) {
                Optional<Basis> unit = unit(text);
                if (unit.isEmpty() || quantity.basis().isPresent() && !quantity.basis().equals(unit)) {
                    return Optional.empty();
                }
                if (quantity.basis().isEmpty()) {
                    cells.set(i, CellText.strip(cells.get(i)) + " " + text);
                    any = true;
                }
            } else if (isLabel(cells, i)) {
                return Optional.empty();
            }
        }
        return any ? Optional.of(new CsvRow(names.line(), cells)) : Optional.empty();
    }

    /** True where the elements under each unit, up to the next text of the row, are the same ones. */
    private static boolean isOverTheSameElements(CsvRow names, CsvRow units) {
        Map<Integer, List<Element>> under = new LinkedHashMap<>();
        int unit = -1;
        for (int i = 0; i < names.cells().size(); i++) {
            String text = i < units.cells().size() ? CellText.strip(units.cells().get(i)) : "";
            if (!text.isEmpty()) {
                unit = unit(text).isPresent() ? i : -1;
            }
            Optional<Element> element = bareElement(names.cells().get(i));
            if (unit >= 0 && element.isPresent()) {
                under.computeIfAbsent(unit, column -> new ArrayList<>()).add(element.get());
            }
        }
        return under.size() > 1 && under.values().stream().distinct().count() == 1;
    }

    private static List<String> spread(CsvRow names, CsvRow units) {
        List<String> spread = new ArrayList<>();
        String unit = "";
        for (int i = 0; i < names.cells().size(); i++) {
            String text = i < units.cells().size() ? CellText.strip(units.cells().get(i)) : "";
            unit = text.isEmpty() ? unit : unit(text).isPresent() ? text : "";
            spread.add(text.isEmpty() && bareElement(names.cells().get(i)).isPresent() ? unit : text);
        }
        return spread;
    }

    private static Optional<Element> bareElement(String name) {
        return ColumnReader.read(name) instanceof ColumnMeaning.Quantity quantity && quantity.basis().isEmpty()
            && quantity.kind() == ColumnMeaning.Kind.VALUE ? quantity.element() : Optional.empty();
    }

    private static boolean isLabel(List<String> names, int column) {
        return SpotField.named(names.get(column)).equals(Optional.of(SpotField.LABEL))
            || SpotField.isLabelOfLastResort(names.get(column)) || column == 0 && CellText.isBlank(names.get(0));
    }

    private static Optional<Basis> unit(String text) {
        return ColumnReader.read(text) instanceof ColumnMeaning.Quantity quantity && quantity.element().isEmpty()
            && quantity.kind() == ColumnMeaning.Kind.VALUE ? quantity.basis() : Optional.empty();
    }
}
