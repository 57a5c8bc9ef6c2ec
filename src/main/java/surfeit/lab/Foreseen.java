package surfeit.lab;

import java.util.List;
import java.util.Optional;
import surfeit.spot.SpotKey;

/**
 * What small work will ask of the record, so that it can be looked up together with what others will ask. The work is free
 * to ask something else.
 *
 * @param sample the name of the sample it is about
 * @param spots  of that sample, by what tells them from one another
 */
public record Foreseen(Optional<String> sample, List<SpotKey> spots) {
    /** Nothing is known of the work. */
    public static final Foreseen NOTHING = new Foreseen(Optional.empty(), List.of());

    public Foreseen {
        spots = List.copyOf(spots);
    }
}
