package surfeit.intake;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** All faults of one upload: the first hundred in full, all of them counted. Not thread-safe. */
public final class FaultList {
    /** Faults kept in full. Judgement: enough to mend a file by, small enough for any answer. */
    public static final int KEPT_MAX = 100;

    private final List<Fault> kept = new ArrayList<>();
    private long count;

    public void add(Fault fault) {
        count++;
        if (kept.size() < KEPT_MAX) {
            kept.add(fault);
        }
    }

    /** How many there were, kept or not. */
    public long count() {
        return count;
    }

    /** The first ones, in the order found. */
    public List<Fault> kept() {
        return Collections.unmodifiableList(kept);
    }
}
