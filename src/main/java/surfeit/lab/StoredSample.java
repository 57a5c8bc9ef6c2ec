package surfeit.lab;

import java.time.Instant;
import surfeit.spot.Sample;

/**
 * A sample as it is on record at one of its revisions.
 *
 * @param name      the lab's name for it
 * @param revision  grows by one with every change of its description or its spots
 * @param sample    its description in force at that revision
 * @param described revision at which that description was given
 * @param spotCount spots on record at that revision, without withdrawn ones
 * @param created   when it was first described
 * @param changed   when it came to this revision
 */
public record StoredSample(String name, long revision, Sample sample, long described, long spotCount, Instant created,
                           Instant changed) {
}
