package surfeit.http.feed;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalLong;
import surfeit.lab.EventFilter;

/**
 * What somebody who listens wants.
 *
 * @param after the last event he has seen; absent where he starts now, 0 for all that is kept
 * @param most  how long he listens, or waits for the next; absent where there is no end
 */
public record Wanted(EventFilter filter, OptionalLong after, Optional<Duration> most) {
}
