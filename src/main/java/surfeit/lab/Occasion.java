package surfeit.lab;

import java.time.Instant;

/** Who acts, and when. */
public record Occasion(String who, Instant when) {
}
