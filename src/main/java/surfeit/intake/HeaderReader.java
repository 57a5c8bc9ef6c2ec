package surfeit.intake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import surfeit.element.Element;
import surfeit.element.Spelling;

/** Decides what each column of a table holds; tells all faults of the header and all columns left out. */
final class HeaderReader {
    private final HeaderCells header;
    private final List<String> cells;
    private final IntakeOptions options;
    private final SpotIntake intake;
    private final List<ColumnMeaning> meanings;
    private final Map<SpotField, Integer> fields = new EnumMap<>(SpotField.class);
    private final Set<Integer> wordColumns = new HashSet<>();
    private boolean refused;

    private HeaderReader(HeaderCells header, IntakeOptions options, SpotIntake intake) {
        this.header = header;
        this.cells = header.names();
        this.options = options;
        this.intake = intake;
        this.meanings = cells.stream().map(ColumnReader::read).toList();
    }

    /** What the names of a table say; empty where they have faults, which the intake then holds. */
    static Optional<TableHeader> read(HeaderCells header, IntakeOptions options, SpotIntake intake) {
        return new HeaderReader(header, options, intake).header();
    }

    private Optional<TableHeader> header() {
        readFields();
        Optional<Integer> elementColumn = elementColumn();
        Set<Integer> nameless = nameless();
        unknownElements(elementColumn.isPresent());
        ValueColumnsChooser chooser =
            new ValueColumnsChooser(this, options.stated().unit(), fields.containsKey(SpotField.UNIT));
        List<ValueColumns> values = elementColumn.isPresent() ? longValues(chooser) : wideValues(chooser);
        if (!fields.containsKey(SpotField.LABEL) && !refused) {
            refuseLabelless(elementColumn.isPresent());
        }
        if (values.size() > options.limits().elementsPerSpotMax()) {
            refuse(0, Refusal.expected(FaultCode.UPLOAD_TOO_LARGE, "at most " + options.limits().elementsPerSpotMax()
                + " elements", values.size()).setting(IntakeLimits.ELEMENTS_SETTING));
        }
        return refused ? Optional.empty() : Optional.of(
            new TableHeader(names(), fields, elementColumn, values, chooser.basis(), nameless, wordColumns));
    }

    private void refuseLabelless(boolean isLong) {
        refuse(0, FaultCode.UNREADABLE_TABLE, "a header with a column \"label\" that says which spot a row is of"
            + (isLong ? " (the same in every row of one spot)" : ""), Spelling.quoted(String.join(" ", cells))
            + (isLong ? "; name such a column \"label\", or add it: where all rows are of one spot, with its label in each"
            : "; name that column \"label\""));
    }

    /** All names but the missing ones at the end of the line. */
    private List<String> names() {
        int last = meanings.size();
        while (last > 0 && meanings.get(last - 1) instanceof ColumnMeaning.Nameless) {
            last--;
        }
        return cells.subList(0, last);
    }

    private void readFields() {
        Map<SpotField, List<Integer>> named = new EnumMap<>(SpotField.class);
        for (int i = 0; i < meanings.size(); i++) {
            if (meanings.get(i) instanceof ColumnMeaning.Field field) {
                named.computeIfAbsent(field.field(), f -> new ArrayList<>()).add(i);
            }
        }
        named.forEach((field, columns) -> {
            List<Integer> own = columns.stream()
                .filter(i -> ((ColumnMeaning.Field) meanings.get(i)).ownName()).toList();
            List<Integer> taken = own.isEmpty() ? columns : own;
            if (!own.isEmpty()) {
                columns.stream().filter(i -> !own.contains(i))
                    .forEach(i -> leaveOut(i, "another " + header.part() + " is named " + field.text()));
            }
            if (taken.size() > 1) {
                refuseTwice(taken.get(0), taken.get(1), field.text());
            }
            fields.put(field, taken.get(0));
            if (field.holdsWords()) {
                wordColumns.add(taken.get(0));
            }
        });
        if (!fields.containsKey(SpotField.LABEL)) {
            labelOfLastResort();
        }
    }

    /** Where nothing else says which spot a row is of: a column {@code No.} or {@code ID}, or a first one without name. */
    private void labelOfLastResort() {
        List<Integer> columns = new ArrayList<>();
        for (int i = 0; i < meanings.size(); i++) {
            if (SpotField.isLabelOfLastResort(cells.get(i))) {
                columns.add(i);
            }
        }
        if (columns.isEmpty() && meanings.size() > 1 && meanings.get(0) instanceof ColumnMeaning.Nameless) {
            columns.add(0);
        }
        if (columns.size() > 1) {
            refuseTwice(columns.get(0), columns.get(1), SpotField.LABEL.text());
        }
        if (!columns.isEmpty()) {
            fields.put(SpotField.LABEL, columns.get(0));
            wordColumns.add(columns.get(0));
        }
    }

    private Optional<Integer> elementColumn() {
        Optional<Integer> column = Optional.empty();
        for (int i = 0; i < meanings.size(); i++) {
            if (meanings.get(i) instanceof ColumnMeaning.ElementNames) {
                if (column.isPresent()) {
                    refuseTwice(column.get(), i, "element");
                }
                column = Optional.of(i);
                wordColumns.add(i);
            }
        }
        return column;
    }

    /** Nameless columns must stay empty; the first column may count rows, as data frames write it, and is left out. */
    private Set<Integer> nameless() {
        Set<Integer> nameless = new HashSet<>();
        for (int i = 0; i < meanings.size(); i++) {
            if (fields.getOrDefault(SpotField.LABEL, -1) == i) {
                continue;
            }
            if (meanings.get(i) instanceof ColumnMeaning.Other) {
                leaveOut(i, "neither a field nor an element");
            } else if (meanings.get(i) instanceof ColumnMeaning.Nameless && i == 0 && meanings.size() > 1) {
                leaveOut(i, "the " + header.part() + " has no name");
            } else if (meanings.get(i) instanceof ColumnMeaning.Nameless) {
                nameless.add(i);
            }
        }
        return nameless;
    }

    /** In a long table the element stands in the row, so that words beside a unit are words about the value. */
    private void unknownElements(boolean isLong) {
        for (int i = 0; i < meanings.size(); i++) {
            if (meanings.get(i) instanceof ColumnMeaning.UnknownElement words && isLong) {
                leaveOut(i, Spelling.quoted(words.text()) + " is not understood");
            } else if (meanings.get(i) instanceof ColumnMeaning.UnknownElement unknown) {
                String hint = unknown.nearest().map(symbol -> "; nearest known: " + symbol).orElse("");
                refuse(i, FaultCode.UNKNOWN_ELEMENT, "an element symbol beside the unit",
                    Spelling.quoted(unknown.text()) + hint);
            }
        }
    }

    private List<ValueColumns> wideValues(ValueColumnsChooser chooser) {
        Map<Element, List<Integer>> byElement = new LinkedHashMap<>();
        for (int i = 0; i < meanings.size(); i++) {
            if (meanings.get(i) instanceof ColumnMeaning.Quantity quantity) {
                if (quantity.element().isPresent()) {
                    byElement.computeIfAbsent(quantity.element().get(), e -> new ArrayList<>()).add(i);
                } else if (quantity.basis().isPresent()) {
                    refuse(i, FaultCode.UNKNOWN_ELEMENT, "an element symbol beside the unit", "none");
                } else {
                    leaveOut(i, "neither a field nor an element");
                }
            }
        }
        List<ValueColumns> values = new ArrayList<>();
        byElement.forEach((element, columns) -> chooser.choose(Optional.of(element), columns).ifPresent(values::add));
        if (values.isEmpty() && !refused) {
            refuse(0, FaultCode.UNREADABLE_TABLE, "a header with element columns such as \"Ag at%\"",
                Spelling.quoted(String.join(" ", cells)));
        }
        return values;
    }

    private List<ValueColumns> longValues(ValueColumnsChooser chooser) {
        List<Integer> columns = new ArrayList<>();
        for (int i = 0; i < meanings.size(); i++) {
            if (meanings.get(i) instanceof ColumnMeaning.Quantity quantity) {
                if (quantity.element().isPresent()) {
                    refuse(i, FaultCode.UNREADABLE_TABLE,
                        "a column \"element\" with one element a row, or a column an element", "both");
                } else {
                    columns.add(i);
                }
            }
        }
        List<ValueColumns> values = new ArrayList<>();
        chooser.choose(Optional.empty(), columns).ifPresent(values::add);
        if (values.isEmpty() && !refused) {
            refuse(0, FaultCode.UNREADABLE_TABLE, "a column of values such as \"at%\" beside the column \"element\"",
                "none");
        }
        return values;
    }

    /** {@code column} or {@code row}. */
    String part() {
        return header.part();
    }

    ColumnMeaning.Quantity quantity(int column) {
        return (ColumnMeaning.Quantity) meanings.get(column);
    }

    void leaveOut(int column, String reason) {
        intake.leaveOut(header.leftOut(column, reason));
    }

    void refuseTwice(int first, int second, String what) {
        refuse(second, FaultCode.UNREADABLE_TABLE, "one " + header.part() + " for " + what,
            header.found(first) + " and " + header.found(second));
    }

    void refuse(int column, FaultCode code, String expected, String found) {
        refuse(column, Refusal.expected(code, expected, found));
    }

    private void refuse(int column, Refusal refusal) {
        intake.refuseTable(refusal.at(header.place(column)));
        refused = true;
    }
}
