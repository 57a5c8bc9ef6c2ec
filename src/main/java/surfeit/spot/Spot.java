package surfeit.spot;

import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import surfeit.composition.Basis;
import surfeit.element.Element;

/**
 * One place the beam stood on, and what the workstation reported there. Immutable, thread-safe.
 *
 * @param label        the lab's name of the spot
 * @param particle     the particle (or declared area) it lies on, if stated
 * @param feature      the lab's word for what it shows, "dark patch" or "matrix", if stated
 * @param session      the measuring occasion: same instrument, settings, standards and day, if stated
 * @param acquiredTime when it was measured, if stated
 * @param reference    the piece of known composition it was measured on; absent for a spot of the specimen
 * @param basis        what its values are fractions of
 * @param values       what was reported, in the order reported
 */
public record Spot(String label, Optional<String> particle, Optional<String> feature, Optional<String> session,
                   Optional<OffsetDateTime> acquiredTime, Conditions conditions, Optional<ReferencePiece> reference,
                   Basis basis, Map<Element, ReportedValue> values) {
    /** Most elements one spot may list; the setting {@code elements-per-spot-max} may lower it. */
    public static final int ELEMENTS_MAX = 64;

    public Spot {
        values = ReportedValues.of(values);
        if (label.isBlank()) {
            throw new IllegalArgumentException("A spot needs a label.");
        }
    }

    /** What tells this spot from the others of its sample. */
    public SpotKey key() {
        return SpotKey.ofTime(session, label, acquiredTime);
    }

    public boolean isReference() {
        return reference.isPresent();
    }
}
