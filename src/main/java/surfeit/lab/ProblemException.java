package surfeit.lab;

import java.util.List;
import java.util.Optional;

/** A request that is refused, with everything the one who sent it needs to put it right. */
public final class ProblemException extends RuntimeException {
    /** How many faults an answer tells in full; the count is always true. */
    public static final int FAULTS_IN_FULL = 100;

    private final Problem problem;
    private final transient List<Fault> faults;
    private final long faultCount;
    private final transient Optional<String> setting;

    public ProblemException(Problem problem, String detail) {
        this(problem, detail, List.of(), 0, Optional.empty());
    }

    /** @param faultCount how many faults there are; {@code faults} may hold only the first of them */
    public ProblemException(Problem problem, String detail, List<Fault> faults, long faultCount,
                            Optional<String> setting) {
        super(detail);
        this.problem = problem;
        this.faults = List.copyOf(faults.subList(0, Math.min(faults.size(), FAULTS_IN_FULL)));
        this.faultCount = Math.max(faultCount, faults.size());
        this.setting = setting;
    }

    /** A refusal for faults that were all found; the first one's kind names it. */
    public static ProblemException of(List<Fault> faults) {
        return of(faults, faults.size());
    }

    /** A refusal for faults of which only the first may be given. */
    public static ProblemException of(List<Fault> first, long count) {
        String detail = count == 1 ? first.get(0).detail() : count + " faults; the first: " + first.get(0).detail();
        return new ProblemException(first.get(0).code(), detail, first, count, Fault.setting(first));
    }

    /** The same refusal, naming the setting that would change the outcome. */
    public ProblemException withSetting(String name) {
        return new ProblemException(problem, getMessage(), faults, faultCount, Optional.of(name));
    }

    /** The same refusal; where it is of this kind and names no place, it is at this one of the JSON body (RFC 6901). */
    public ProblemException at(String pointer, Problem kind) {
        return problem != kind || !faults.isEmpty() ? this : new ProblemException(problem, getMessage(),
            List.of(Fault.at(Place.pointer(pointer), problem, getMessage())), 1, setting);
    }

    public Problem problem() {
        return problem;
    }

    /** What was expected, what came, where, in which unit. */
    public String detail() {
        return getMessage();
    }

    /** The faults, at most the first {@link #FAULTS_IN_FULL}. */
    public List<Fault> faults() {
        return faults;
    }

    /** How many faults there are in all. */
    public long faultCount() {
        return faultCount;
    }

    /** The setting that can change the outcome, if one can. */
    public Optional<String> setting() {
        return setting;
    }
}
