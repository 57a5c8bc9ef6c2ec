package surfeit.xray;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * The most recently used results of a pure calculation, by their inputs; bounded.
 *
 * <p>Keys and values must be immutable. Two threads may work out the same result at once; both get equal values.
 * Thread-safe.
 */
public final class RecentResults<K, V> {
    private final Map<K, V> byInputs;

    public RecentResults(int mostResults) {
        if (mostResults < 1) {
            throw new IllegalArgumentException("Expected room for at least 1 result, got " + mostResults + ".");
        }
        byInputs = new LinkedHashMap<>(16, 0.75f, true) {
            @Override
            protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                return size() > mostResults;
            }
        };
    }

    /** The result for these inputs, from memory or worked out now (outside the lock). */
    public V get(K inputs, Supplier<V> calculation) {
        Optional<V> known;
        synchronized (byInputs) {
            known = Optional.ofNullable(byInputs.get(inputs));
        }
        if (known.isPresent()) {
            return known.get();
        }
        V result = calculation.get();
        synchronized (byInputs) {
            byInputs.put(inputs, result);
        }
        return result;
    }

    /** How many results are held. */
    public int size() {
        synchronized (byInputs) {
            return byInputs.size();
        }
    }
}
