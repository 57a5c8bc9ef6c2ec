package surfeit.lab;

import java.util.Optional;
import java.util.Set;

/** Which events are wanted; no types means all. */
public record EventFilter(Set<LabEvent.Type> types, Optional<String> sample) {
    public static final EventFilter ALL = new EventFilter(Set.of(), Optional.empty());

    public EventFilter {
        types = Set.copyOf(types);
    }
}
