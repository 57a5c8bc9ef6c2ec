package surfeit.lab;

import java.util.Optional;
import java.util.OptionalLong;

/** Makes the events of the use cases; their ids are given by the store. */
final class Events {
    private Events() {
    }

    static LabEvent of(LabEvent.Type type, Occasion occasion, String sample) {
        return new LabEvent(0, type, occasion.when(), Optional.of(sample), Optional.empty(), OptionalLong.empty());
    }

    static LabEvent of(LabEvent.Type type, Occasion occasion, Optional<String> sample, String subject) {
        return new LabEvent(0, type, occasion.when(), sample, Optional.of(subject), OptionalLong.empty());
    }

    static LabEvent imported(Occasion occasion, String sample, String importId, long acceptedCount) {
        return new LabEvent(0, LabEvent.Type.SPOTS_IMPORTED, occasion.when(), Optional.of(sample),
            Optional.of(importId), OptionalLong.of(acceptedCount));
    }
}
