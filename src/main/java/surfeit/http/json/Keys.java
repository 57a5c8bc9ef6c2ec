package surfeit.http.json;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The keys one JSON object may have, each with what reads its value.
 *
 * @param <T> what the object is read into
 */
final class Keys<T> {
    /** Reads the value of one key into the target. */
    interface Reader<T> {
        void read(JsonInput in, T target) throws IOException;
    }

    /** A key with its place in the table, so that a key given twice is noticed. */
    record Key<T>(int index, Reader<T> reader) {
    }

    private final String shape;
    private final Map<String, Key<T>> byName = new LinkedHashMap<>();
    private boolean readsNull;

    /** A table for a shape, named in messages: "a sample", "a spot". */
    Keys(String shape) {
        this.shape = shape;
    }

    Keys<T> key(String name, Reader<T> reader) {
        if (byName.size() == Long.SIZE || byName.put(name, new Key<>(byName.size(), reader)) != null) {
            throw new IllegalStateException("Key " + name + " of " + shape + " stands twice, or the table is full.");
        }
        return this;
    }

    /** From now on null is a value of its own; otherwise a key with null counts as not given. */
    Keys<T> readingNull() {
        readsNull = true;
        return this;
    }

    boolean readsNull() {
        return readsNull;
    }

    /** A key that answers carry and requests may repeat; its value is not read. */
    Keys<T> ignored(String... names) {
        for (String name : names) {
            key(name, (in, target) -> in.skip());
        }
        return this;
    }

    Key<T> get(String name) {
        return byName.get(name);
    }

    String shape() {
        return shape;
    }

    String unknown(String name) {
        return "\"" + name + "\" is not a key of " + shape + Nearest.hint(name, byName.keySet());
    }
}
