package surfeit.lab;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Something that was recorded; a pointer to it, not the thing itself.
 *
 * @param id            grows in the order of record
 * @param time          when, by the clock of whoever recorded it
 * @param sample        name of the sample, if it concerns one
 * @param subject       id of the import, spot, alloy or stored interpretation it is about, if it is about one
 * @param acceptedCount spots recorded, for an import
 */
public record LabEvent(long id, Type type, Instant time, Optional<String> sample, Optional<String> subject,
                       OptionalLong acceptedCount) {
    /** Kinds of event. */
    public enum Type {
        SAMPLE_CHANGED("sample.changed"),
        SPOTS_IMPORTED("spots.imported"),
        SPOT_CORRECTED("spot.corrected"),
        SPOT_WITHDRAWN("spot.withdrawn"),
        ALLOY_CHANGED("alloy.changed"),
        INTERPRETATION_STORED("interpretation.stored"),
        INTERPRETATION_STALE("interpretation.stale");

        private final String word;

        Type(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
