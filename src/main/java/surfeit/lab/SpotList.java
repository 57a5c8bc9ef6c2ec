package surfeit.lab;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/** The spots of an upload that is only to be interpreted: read whole, held in memory. For one use. */
public final class SpotList implements SpotRows.Sink {
    private final List<Spot> spots = new ArrayList<>();
    private final List<Fault> faults = new ArrayList<>();
    private long faultCount;

    private SpotList() {
    }

    /** The spots of an upload, in its order. @throws ProblemException with every fault, where it has any */
    public static List<Spot> read(Upload upload, SpotRows rows, Sample sample) {
        SpotList list = new SpotList();
        try {
            rows.read(upload, sample, list);
        } catch (IOException e) {
            throw new UncheckedIOException("The upload could not be read again from where it was put.", e);
        }
        if (list.faultCount > 0) {
            Fault first = list.faults.get(0);
            throw new ProblemException(first.code(), list.faultCount == 1 ? first.detail()
                : list.faultCount + " faults; the first: " + first.detail(), list.faults, list.faultCount,
                Optional.empty(), Map.of());
        }
        return list.spots;
    }

    @Override
    public void spot(Spot spot, SpotRows.Row row) {
        List<Fault> found = SpotRules.faults(spot, row.place());
        if (found.isEmpty()) {
            spots.add(spot);
        } else {
            rejected(row, found);
        }
    }

    @Override
    public void rejected(SpotRows.Row row, List<Fault> found) {
        faultCount += found.size();
        if (faults.size() < ProblemException.FAULTS_IN_FULL) {
            faults.addAll(found);
        }
    }

    @Override
    public void dialect(Dialect dialect) {
        // An answer echoes the method, not the file.
    }

    @Override
    public void rejectedHeader(String line) {
        // Nothing is given back.
    }

    @Override
    public void leftOut(LeftOut what) {
        // An answer shows spots; what is no spot is not in it.
    }
}
