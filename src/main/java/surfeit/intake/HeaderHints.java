package surfeit.intake;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import surfeit.element.Element;
import surfeit.element.ElementTable;
import surfeit.element.Spelling;

/** What to do with a table in whose first rows no header was found. */
final class HeaderHints {
    private HeaderHints() {
    }

    /** What to do, behind a semicolon; nothing where the first rows look like no table at all. */
    static String of(List<CsvRow> start) {
        if (isPartedByBlanks(start.get(0))) {
            return "; its columns are parted by blanks: save it with tabs, semicolons or commas between them";
        }
        List<Element> elements = start.stream().filter(row -> row.cells().size() > 1)
            .flatMap(row -> element(row.cells().get(0)).stream()).toList();
        if (elements.size() < 2) {
            return elementsInWords(start);
        }
        return Set.copyOf(elements).size() < elements.size() ? elementsAgain(start) : elementsOnce(start);
    }

    private static boolean isPartedByBlanks(CsvRow row) {
        String text = row.cells().size() == 1 ? CellText.strip(row.cells().get(0)) : "";
        List<String> parts = text.length() > Place.SHOWN_MAX * 10 ? List.of() : List.of(text.split(" {2,}"));
        return parts.size() > 1 && TableHeader.isComplete(parts);
    }

    /** True for the header of a long table without a column of labels. */
    private static boolean isOfOneSpot(CsvRow row) {
        List<ColumnMeaning> meanings = row.cells().stream().map(ColumnReader::read).toList();
        return meanings.stream().anyMatch(ColumnMeaning.ElementNames.class::isInstance)
            && meanings.stream().anyMatch(meaning -> meaning instanceof ColumnMeaning.Quantity quantity
                && quantity.element().isEmpty() && quantity.kind() == ColumnMeaning.Kind.VALUE);
    }

    private static String elementsAgain(List<CsvRow> start) {
        return TurnedRows.hasLabels(start)
            ? "; an element stands twice in the first column: send each table as a file of its own"
            : "; each spot seems to be a table of its own: put them below each other under one header such as "
                + "\"label;element;at%\", the label in every row";
    }

    private static String elementsOnce(List<CsvRow> start) {
        return start.stream().filter(HeaderHints::isOfOneSpot).findFirst().map(row -> "; line " + row.line()
            + " begins a table of one spot that does not say its label: add a column \"label\" with the label in each row")
            .orElse("; the elements stand one below the other: above them there must be a row that begins with \"Element\" "
                + "and has the label of a spot above each column, such as \"Element;P1-1;P1-2\"");
    }

    /** Names of elements in another language, or misspelt. */
    private static String elementsInWords(List<CsvRow> start) {
        List<String> words = start.stream().filter(row -> row.cells().size() > 1)
            .map(row -> CellText.strip(row.cells().get(0)))
            .filter(word -> word.length() > 2 && ElementTable.standard().nearestSymbol(word).isPresent()).toList();
        return words.size() < 2 ? "" : "; write the elements as symbols, such as "
            + ElementTable.standard().nearestSymbol(words.get(0)).orElseThrow() + " for " + Spelling.quoted(words.get(0));
    }

    private static Optional<Element> element(String cell) {
        return ColumnReader.read(cell) instanceof ColumnMeaning.Quantity quantity ? quantity.element() : Optional.empty();
    }
}
