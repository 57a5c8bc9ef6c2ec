package surfeit.intake;

import java.util.List;
import java.util.Set;

/**
 * The header of a table as it was sent.
 *
 * @param names       of the columns
 * @param wordColumns columns that hold words, by index from 0
 */
public record TableHead(List<String> names, char delimiter, Set<Integer> wordColumns) {
    public TableHead {
        names = List.copyOf(names);
        wordColumns = Set.copyOf(wordColumns);
    }
}
