package surfeit.spot;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;

/** The natural key of a spot within its sample: session, label and time of acquisition; absent equals absent. */
public record SpotKey(Optional<String> session, String label, Optional<Instant> acquired) {

    static SpotKey ofTime(Optional<String> session, String label, Optional<OffsetDateTime> acquiredTime) {
        return new SpotKey(session, label, acquiredTime.map(OffsetDateTime::toInstant));
    }
}
