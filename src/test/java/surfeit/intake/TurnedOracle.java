package surfeit.intake;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import surfeit.element.Element;
import surfeit.element.Spelling;
import surfeit.fuzz.PlainTable;
import surfeit.spot.ReportedValue;

/** Holds what was made of a turned table against its columns: every value under its spot and beside its element. */
final class TurnedOracle {
    private TurnedOracle() {
    }

    static void check(TableFuzz.Heard heard, IntakeReport report, PlainTable table) {
        heard.spots().forEach(spot -> checkSpot(spot, table));
        if (report.leftOutCount() == report.leftOut().size() && report.faultCount() == report.faults().size()) {
            checkEveryColumnIsAccountedFor(heard, report, table);
        }
    }

    /** The cells of a spot's column, and its label without a unit. */
    static Stream<String> column(ReadSpot read, PlainTable table) {
        int column = ((Place.Cell) read.place()).column();
        return Stream.concat(table.linesAfter(0).stream().map(line -> cell(table, line, column)),
            labelWithoutUnit(read, table).stream());
    }

    /** What the cell of the label begins or ends with, or the one left of it that was merged with it. */
    private static List<String> labelWithoutUnit(ReadSpot read, PlainTable table) {
        Place.Cell place = (Place.Cell) read.place();
        String label = read.rows().get(0).cells().stream()
            .filter(cell -> Spelling.composed(PlainTable.stripped(cell)).equals(read.spot().label())).findFirst().orElse("");
        boolean stands = Stream.of(place.column(), place.column() - 1).map(column -> cell(table, place.line(), column))
            .anyMatch(cell -> !label.isEmpty() && cell.contains(label));
        return stands ? List.of(label) : List.of();
    }

    private static void checkSpot(ReadSpot read, PlainTable table) {
        int column = ((Place.Cell) read.place()).column();
        for (Map.Entry<Element, ReportedValue> value : read.spot().values().entrySet()) {
            String text = value.getValue().asReported();
            boolean found = text.isEmpty() || table.linesAfter(0).stream().anyMatch(line ->
                PlainTable.stripped(cell(table, line, column)).equals(text) && names(cell(table, line, 1), value.getKey()));
            TableOracle.require(found, "the value " + text + " of " + value.getKey() + " in column " + column);
        }
    }

    private static boolean names(String cell, Element element) {
        return cell.contains(element.symbol())
            || cell.toLowerCase(java.util.Locale.ROOT).contains(element.name().toLowerCase(java.util.Locale.ROOT));
    }

    private static void checkEveryColumnIsAccountedFor(TableFuzz.Heard heard, IntakeReport report, PlainTable table) {
        Set<Integer> told = new HashSet<>();
        heard.spots().forEach(spot -> told.add(((Place.Cell) spot.place()).column()));
        report.faults().forEach(fault -> told.add(fault.place() instanceof Place.Cell cell ? cell.column() : 0));
        report.leftOut().forEach(part -> told.add(part instanceof LeftOut.Column column ? column.column() : 0));
        if (heard.spots().isEmpty()) {
            return;
        }
        long labels = ((Place.Cell) heard.spots().get(0).place()).line();
        for (int column = 2; column <= table.row(labels).size(); column++) {
            String name = PlainTable.stripped(cell(table, labels, column));
            boolean ofRows = name.isEmpty() || SpotField.named(name).isPresent()
                || name.matches("(?i).*(line|serie|linie|shell|schale).*");
            TableOracle.require(ofRows || told.contains(column), "column " + column + " is lost");
        }
    }

    private static String cell(PlainTable table, long line, int column) {
        List<String> cells = table.row(line);
        return column > 0 && column <= cells.size() ? cells.get(column - 1) : "";
    }
}
