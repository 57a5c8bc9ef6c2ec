package surfeit.lab;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Part of a list in the order of a key that never changes.
 *
 * @param next key to continue after; empty on the last page
 */
public record Page<T>(List<T> items, Optional<String> next) {
    public Page {
        items = List.copyOf(items);
    }

    /** A page of {@code size} out of one item more than that, which tells whether there is another page. */
    static <T> Page<T> of(List<T> oneMore, int size, Function<T, String> key) {
        if (oneMore.size() <= size) {
            return new Page<>(oneMore, Optional.empty());
        }
        return new Page<>(oneMore.subList(0, size), Optional.of(key.apply(oneMore.get(size - 1))));
    }
}
