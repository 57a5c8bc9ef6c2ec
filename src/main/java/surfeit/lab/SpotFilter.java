package surfeit.lab;

import java.time.Instant;
import java.util.Optional;

/**
 * Which spots of a sample are wanted; an empty part lets all through.
 *
 * @param feature   their feature; {@value #UNLABELLED} means those without one too
 * @param particle  their particle
 * @param session   their session
 * @param from      acquired at this time or later
 * @param to        acquired before this time
 * @param withdrawn true to see withdrawn spots too
 */
public record SpotFilter(Optional<String> feature, Optional<String> particle, Optional<String> session,
                         Optional<Instant> from, Optional<Instant> to, boolean withdrawn) {
    /** What the group of spots without a feature is called. */
    public static final String UNLABELLED = "unlabelled";

    /** All that are not withdrawn. */
    public static final SpotFilter ALL = new SpotFilter(Optional.empty(), Optional.empty(), Optional.empty(),
        Optional.empty(), Optional.empty(), false);

    public SpotFilter withFeature(String word) {
        return new SpotFilter(Optional.of(word), particle, session, from, to, withdrawn);
    }

    public SpotFilter withWithdrawn() {
        return new SpotFilter(feature, particle, session, from, to, true);
    }
}
