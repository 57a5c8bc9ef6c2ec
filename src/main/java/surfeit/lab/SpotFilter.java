package surfeit.lab;

import java.time.Instant;
import java.util.Optional;

/**
 * Which spots are wanted; an empty part lets all through.
 *
 * @param sample    name of their sample
 * @param feature   their feature; {@value #UNLABELLED} means those without one too
 * @param particle  their particle
 * @param session   their session
 * @param from      acquired at this time or later
 * @param to        acquired before this time
 * @param withdrawn true to see withdrawn spots too
 */
public record SpotFilter(Optional<String> sample, Optional<String> feature, Optional<String> particle,
                         Optional<String> session, Optional<Instant> from, Optional<Instant> to, boolean withdrawn) {
    /** What the group of spots without a feature is called. */
    public static final String UNLABELLED = "unlabelled";

    public static final SpotFilter ALL = new SpotFilter(Optional.empty(), Optional.empty(), Optional.empty(),
        Optional.empty(), Optional.empty(), Optional.empty(), false);

    public static SpotFilter ofSample(String sample) {
        return ALL.withSample(sample);
    }

    public SpotFilter withSample(String name) {
        return new SpotFilter(Optional.of(name), feature, particle, session, from, to, withdrawn);
    }

    public SpotFilter withFeature(String word) {
        return new SpotFilter(sample, Optional.of(word), particle, session, from, to, withdrawn);
    }

    public SpotFilter withWithdrawn() {
        return new SpotFilter(sample, feature, particle, session, from, to, true);
    }
}
