package surfeit.xray;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * The most recently used results of a pure calculation, by their inputs; bounded.
 *
 * <p>They are kept in two halves. Who is used goes into the recent half; once that is full, it becomes the half before,
 * and what was in that and was not used since is forgotten. So whoever only reads the recent half waits for nobody, and
 * the last half of the bound is always remembered.
 *
 * <p>Keys and values must be immutable. Two threads may work out the same result at once; both get equal values.
 * Thread-safe.
 */
public final class RecentResults<K, V> {
    private final int half;
    private volatile Map<K, V> recent = new ConcurrentHashMap<>();
    private volatile Map<K, V> before = new ConcurrentHashMap<>();

    public RecentResults(int mostResults) {
        if (mostResults < 2) {
            throw new IllegalArgumentException("Expected room for at least 2 results, got " + mostResults + ".");
        }
        half = mostResults / 2;
    }

    /** The result for these inputs, from memory or worked out now. */
    public V get(K inputs, Supplier<V> calculation) {
        Optional<V> known = Optional.ofNullable(recent.get(inputs));
        if (known.isPresent()) {
            return known.get();
        }
        V result = Optional.ofNullable(before.get(inputs)).orElseGet(calculation);
        keep(inputs, result);
        return result;
    }

    private synchronized void keep(K inputs, V result) {
        if (recent.size() == half && !recent.containsKey(inputs)) {
            before = recent;
            recent = new ConcurrentHashMap<>();
        }
        recent.put(inputs, result);
        before.remove(inputs);
    }

    /** How many results are held. */
    public synchronized int size() {
        return recent.size() + before.size();
    }
}
