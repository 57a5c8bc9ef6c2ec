package surfeit.http;

import java.time.Duration;
import surfeit.lab.ProblemException;

/** A refusal that is to be answered only after a while. Carries no stack trace. */
final class HeldRefusal extends RuntimeException {
    private final transient ProblemException refusal;
    private final transient Duration hold;

    HeldRefusal(ProblemException refusal, Duration hold) {
        super(refusal.getMessage(), refusal, false, false);
        this.refusal = refusal;
        this.hold = hold;
    }

    ProblemException refusal() {
        return refusal;
    }

    Duration hold() {
        return hold;
    }
}
