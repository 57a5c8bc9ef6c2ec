package surfeit.storage;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import surfeit.spot.Spot;
import surfeit.spot.SpotKey;

/** Looks spots up by their natural key and records new ones, many at a time. Not thread-safe. */
interface SpotLots {

    /**
     * The spot on record under the key of each of these.
     *
     * @param payload the present revision, encoded
     */
    record Found(long number, boolean withdrawn, byte[] payload) {
    }

    /** Where a spot has its place: the key of its sample in the database, and what tells it from the others there. */
    record Place(long sample, SpotKey key) {
    }

    List<Optional<Found>> find(List<Spot> spots) throws SQLException;

    /**
     * Records spots whose keys are not on record and differ, under {@code first} and the numbers that follow.
     *
     * @param payloads the spots, encoded
     */
    void recordNew(long first, List<Spot> spots, List<byte[]> payloads) throws SQLException;

    /**
     * Records each spot whose key is not on record yet, the first of those with one key, under {@code first} and the
     * numbers that follow; a number whose spot was known stays unused.
     *
     * @param payloads the spots, encoded
     * @return which of them were new
     */
    boolean[] record(long first, List<Spot> spots, List<byte[]> payloads) throws SQLException;
}
