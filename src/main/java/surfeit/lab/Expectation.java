package surfeit.lab;

import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What the one who changes a thing takes its present revision to be.
 *
 * @param kind      what was said
 * @param revisions the revisions named, where some were
 */
public record Expectation(Kind kind, Set<Long> revisions) {
    /** Nothing said; there must be none; there must be one; one of those named. */
    public enum Kind { NONE_STATED, MUST_NOT_EXIST, MUST_EXIST, ONE_OF }

    public static final Expectation NONE = new Expectation(Kind.NONE_STATED, Set.of());
    public static final Expectation NEW = new Expectation(Kind.MUST_NOT_EXIST, Set.of());
    public static final Expectation EXISTING = new Expectation(Kind.MUST_EXIST, Set.of());

    public Expectation {
        revisions = Set.copyOf(revisions);
    }

    public static Expectation revision(long... numbers) {
        return new Expectation(Kind.ONE_OF, Arrays.stream(numbers).boxed().collect(Collectors.toUnmodifiableSet()));
    }

    /** Refuses a change of something that is there with other content. @throws ProblemException if not met */
    void requireForChange(String what, long present) {
        if (kind == Kind.NONE_STATED) {
            throw new ProblemException(Problem.REVISION_REQUIRED, what + " exists with other content at revision "
                + present + "; name the revision the change starts from.");
        }
        requireIfStated(what, Optional.of(present));
    }

    /** Refuses where something else was expected than is there. @throws ProblemException if not met */
    void requireIfStated(String what, Optional<Long> present) {
        boolean met = switch (kind) {
            case NONE_STATED -> true;
            case MUST_NOT_EXIST -> present.isEmpty();
            case MUST_EXIST -> present.isPresent();
            case ONE_OF -> present.isPresent() && revisions.contains(present.get());
        };
        if (!met) {
            throw new ProblemException(Problem.REVISION_MISMATCH, what + " "
                + present.map(revision -> "is at revision " + revision).orElse("does not exist")
                + "; the request expects " + expected() + ".");
        }
    }

    private String expected() {
        return switch (kind) {
            case MUST_NOT_EXIST -> "that it does not exist";
            case ONE_OF -> revisions.isEmpty() ? "another state" : "revision " + revisions;
            default -> "that it exists";
        };
    }
}
