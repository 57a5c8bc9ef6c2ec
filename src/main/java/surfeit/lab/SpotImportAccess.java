package surfeit.lab;

import java.util.List;
import java.util.Optional;
import surfeit.spot.Spot;

/** The record of one import while it is being made. Not thread-safe. */
public interface SpotImportAccess {

    /**
     * Records each of these spots unless its natural key is on record, in their order.
     *
     * @return for each of them the spot that was on record under its key, if there was one
     */
    List<Optional<Recorded>> add(List<Spot> spots);

    /** Number of the first of the spots that are handed over next; each has one more than the spot before it. */
    long nextSpot();

    /** Appends to a file kept with the import. */
    void appendFile(KeptFile.Kind kind, byte[] bytes, int length);

    /** Public id of the import. */
    String id();

    /** Completes the import: its report, and the sample's new revision where a spot was recorded. */
    void finish(ImportReport report);

    /**
     * A spot found on record.
     *
     * @param id           its public id
     * @param spot         its present revision
     * @param inThisImport true where it came earlier in the same upload
     */
    record Recorded(String id, Spot spot, boolean withdrawn, boolean inThisImport) {
    }
}
