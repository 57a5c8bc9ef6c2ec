package surfeit.lab;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;
import surfeit.element.Spelling;
import surfeit.spot.Spot;

/**
 * Which spots of a sample are wanted; an empty part lets all through. A name is found whichever Unicode normal form it is
 * recorded or asked for in.
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

    /** True for a spot that is wanted. */
    public boolean matches(StoredSpot stored) {
        Spot spot = stored.spot();
        Optional<Instant> acquired = spot.acquiredTime().map(OffsetDateTime::toInstant);
        return (withdrawn || !stored.withdrawn())
            && isWanted(feature, Optional.of(spot.feature().orElse(UNLABELLED)))
            && isWanted(particle, spot.particle())
            && isWanted(session, spot.session())
            && from.map(first -> acquired.isPresent() && !acquired.get().isBefore(first)).orElse(true)
            && to.map(end -> acquired.isPresent() && acquired.get().isBefore(end)).orElse(true);
    }

    private static boolean isWanted(Optional<String> wanted, Optional<String> name) {
        return wanted.isEmpty() || wanted.map(Spelling::composed).equals(name.map(Spelling::composed));
    }

    public SpotFilter withFeature(String word) {
        return new SpotFilter(Optional.of(word), particle, session, from, to, withdrawn);
    }

    public SpotFilter withWithdrawn() {
        return new SpotFilter(feature, particle, session, from, to, true);
    }
}
