package surfeit.lab;

import java.util.Optional;

/** Which part of a list is wanted: at most {@code size} items after the one whose key is {@code after}. */
public record PageRequest(int size, Optional<String> after) {
    public PageRequest {
        if (size < 1) {
            throw new IllegalArgumentException("A page holds at least one item, got " + size + ".");
        }
    }

    public static PageRequest first(int size) {
        return new PageRequest(size, Optional.empty());
    }
}
