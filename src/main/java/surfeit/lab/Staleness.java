package surfeit.lab;

import java.util.List;
import java.util.Optional;

/**
 * Tells frozen answers that an input has changed: each once, at the first change, in the transaction of that change.
 */
final class Staleness {
    private Staleness() {
    }

    static void sampleChanged(WriteAccess access, String sample, InputChange change) {
        mark(access, access.freshInterpretations(sample), "sample " + sample, change);
    }

    static void alloyChanged(WriteAccess access, String alloy, InputChange change) {
        mark(access, access.freshInterpretationsOfAlloy(alloy), "alloy " + alloy, change);
    }

    private static void mark(WriteAccess access, List<StoredInterpretation> fresh, String of, InputChange change) {
        for (StoredInterpretation interpretation : fresh) {
            access.markStale(interpretation, change);
            access.append(Events.of(LabEvent.Type.INTERPRETATION_STALE, change.occasion(),
                Optional.of(interpretation.sample()), interpretation.id()));
            access.audit(change.occasion(), StoredInterpretation.TURNED_STALE, Optional.of(interpretation.sample()),
                interpretation.id() + ": " + change.what() + ", revision " + change.revision() + " of " + of);
        }
    }
}
