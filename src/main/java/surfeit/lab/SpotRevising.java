package surfeit.lab;

import java.util.Optional;
import surfeit.spot.Spot;

/** Corrects and withdraws spots on record: always by a further revision with a reason. */
final class SpotRevising {
    /** Longest reason, in characters. Judgement. */
    static final int REASON_MAX = 2000;

    private SpotRevising() {
    }

    static StoredSpot correct(WriteAccess access, String id, String reason, Expectation expectation,
                              Laboratory.Correction correction, Occasion occasion) {
        String why = requireReason(reason);
        StoredSpot present = Lookups.spot(access, id);
        expectation.requireIfStated("Spot " + id, Optional.of(present.revision()));
        Spot corrected = correction.apply(present.spot(), Lookups.sample(access, present.sample()).sample());
        if (!corrected.key().equals(present.spot().key())) {
            throw new ProblemException(Problem.NAME_INVALID, "Label, session and acquired time tell a spot from the"
                + " others and stay; withdraw spot " + id + " and record it anew under its right name.");
        }
        SpotRules.faults(corrected, Place.WHOLE).stream().findFirst().ifPresent(fault -> {
            throw new ProblemException(fault.code(), fault.detail());
        });
        if (corrected.equals(present.spot())) {
            return present;
        }
        StoredSpot now = access.revise(present, corrected, present.withdrawn(), why, occasion);
        record(access, LabEvent.Type.SPOT_CORRECTED, "spot corrected", now, occasion,
            SpotDifference.inWords(present.spot(), corrected) + "; reason: " + why);
        outdate(access, SampleRevision.What.SPOT_CORRECTED, now, occasion);
        return now;
    }

    static StoredSpot withdraw(WriteAccess access, String id, String reason, Expectation expectation,
                               Occasion occasion) {
        String why = requireReason(reason);
        StoredSpot present = Lookups.spot(access, id);
        expectation.requireIfStated("Spot " + id, Optional.of(present.revision()));
        if (present.withdrawn()) {
            return present;
        }
        StoredSpot now = access.revise(present, present.spot(), true, why, occasion);
        record(access, LabEvent.Type.SPOT_WITHDRAWN, "spot withdrawn", now, occasion, "reason: " + why);
        outdate(access, SampleRevision.What.SPOT_WITHDRAWN, now, occasion);
        return now;
    }

    private static void outdate(WriteAccess access, SampleRevision.What what, StoredSpot now, Occasion occasion) {
        Staleness.sampleChanged(access, now.sample(),
            InputChange.ofSample(what, now.sampleRevision(), occasion, Optional.of(now.id())));
    }

    private static void record(WriteAccess access, LabEvent.Type type, String what, StoredSpot now, Occasion occasion,
                               String detail) {
        access.append(Events.of(type, occasion, Optional.of(now.sample()), now.id()));
        access.audit(occasion, what, Optional.of(now.sample()),
            now.id() + " revision " + now.revision() + ": " + detail);
    }

    private static String requireReason(String reason) {
        String why = reason.strip();
        if (why.isEmpty() || why.length() > REASON_MAX) {
            throw new ProblemException(Problem.REASON_REQUIRED,
                "Say why, in 1 to " + REASON_MAX + " characters; got " + why.length() + ".");
        }
        return why;
    }
}
