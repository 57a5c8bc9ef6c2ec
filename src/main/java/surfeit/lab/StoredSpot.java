package surfeit.lab;

import java.util.Optional;
import surfeit.spot.Spot;

/**
 * A spot as it is on record at one of its revisions.
 *
 * @param id             public id, {@code spt_...}; its number grows in the order of record
 * @param sample         name of its sample
 * @param revision       from 1; grows with each correction and with withdrawal
 * @param sampleRevision revision of the sample that this revision of the spot made
 * @param spot           what was reported
 * @param withdrawn      true where it counts in no calculation any more
 * @param recorded       by whom and when this revision was recorded
 * @param reason         why, for every revision after the first
 * @param importId       the import it came with
 */
public record StoredSpot(String id, String sample, long revision, long sampleRevision, Spot spot, boolean withdrawn,
                         Occasion recorded, Optional<String> reason, String importId) {
}
