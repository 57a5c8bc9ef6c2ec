package surfeit.lab;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/** Which events are wanted: of these types and, if one is named, of this sample. */
public record EventFilter(Set<LabEvent.Type> types, Optional<String> sample) {
    public static final EventFilter ALL = new EventFilter(EnumSet.allOf(LabEvent.Type.class), Optional.empty());

    public EventFilter {
        types = Set.copyOf(types);
    }

    /** True where an event is wanted. */
    public boolean matches(LabEvent event) {
        return types.contains(event.type()) && (sample.isEmpty() || sample.equals(event.sample()));
    }
}
