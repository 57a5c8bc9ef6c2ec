package surfeit.lab;

import java.util.Optional;
import surfeit.composition.Alloy;

/**
 * An alloy at one of its revisions.
 *
 * @param revision 0 for one that came with the program; a lab's own statements count from 1 and go before it
 * @param occasion by whom and when it was stated; absent for revision 0
 */
public record StoredAlloy(Alloy alloy, long revision, Optional<Occasion> occasion) {
}
