package surfeit.intake;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import surfeit.composition.Basis;

/**
 * What the columns of one table hold, decided once from its header.
 *
 * @param names         the header as sent, up to its last named column
 * @param fields        columns that are fields of the spot, by index from 0
 * @param elementColumn index of the column with element symbols; absent in a wide table
 * @param values        the columns of each element; of a long table the one set of value columns
 * @param basis         unit of all values, where the header or the sender states it
 * @param nameless      indices of columns without a name, which must be empty
 * @param wordColumns   indices of columns that hold words
 */
record TableHeader(List<String> names, Map<SpotField, Integer> fields, Optional<Integer> elementColumn,
                   List<ValueColumns> values, Optional<Basis> basis, Set<Integer> nameless, Set<Integer> wordColumns) {

    boolean isLong() {
        return elementColumn.isPresent();
    }

    /** Name of a column by index; empty where the row is longer than the header. */
    String name(int column) {
        return column < names.size() ? names.get(column) : "";
    }

    /** Index of a field's column, -1 where there is none. */
    int column(SpotField field) {
        return fields.getOrDefault(field, -1);
    }

    /** True where a row names spots and at least one element, or the elements of a long table. */
    static boolean isComplete(List<String> cells) {
        boolean label = false;
        boolean mayBeLabel = false;
        int values = 0;
        for (int i = 0; i < cells.size(); i++) {
            ColumnMeaning meaning = ColumnReader.read(cells.get(i));
            label |= meaning instanceof ColumnMeaning.Field field && field.field() == SpotField.LABEL;
            mayBeLabel |= SpotField.isLabelOfLastResort(cells.get(i))
                || i == 0 && meaning instanceof ColumnMeaning.Nameless;
            boolean element = meaning instanceof ColumnMeaning.Quantity quantity && quantity.element().isPresent();
            values += element ? 1 : meaning instanceof ColumnMeaning.ElementNames ? 2 : 0;
        }
        return label && values > 0 || mayBeLabel && values > 1;
    }

    /** True where the cells of a row are the header again, or another table's header. */
    static boolean looksLikeHeader(List<String> cells) {
        boolean namesLabel = cells.stream().map(SpotField::named)
            .anyMatch(field -> field.equals(Optional.of(SpotField.LABEL)));
        return (namesLabel || isComplete(cells)) && DelimiterChoice.meaningful(cells) >= 2
            && cells.stream().noneMatch(cell -> PrintedNumber.isPlain(CellText.strip(cell)));
    }
}
