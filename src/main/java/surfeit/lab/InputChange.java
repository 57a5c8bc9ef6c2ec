package surfeit.lab;

import java.util.Optional;
import java.util.OptionalLong;

/**
 * The first change of an input after an answer was frozen.
 *
 * @param input    which input changed
 * @param revision the revision of that input that the change made
 * @param what     what was done, in words
 * @param occasion by whom and when
 * @param cause    id of the import, spot or alloy, if there is one
 */
public record InputChange(Input input, long revision, String what, Occasion occasion, Optional<String> cause) {
    /** What the audit and every reader call a further statement of an alloy. */
    public static final String ALLOY_STATED = "alloy stated";

    /** The revision of one of the inputs; empty where another one changed. */
    public OptionalLong revisionOf(Input which) {
        return which == input ? OptionalLong.of(revision) : OptionalLong.empty();
    }

    /** The inputs of an answer. */
    public enum Input { SAMPLE, ALLOY }

    /** A change of the sample's description or spots. */
    public static InputChange ofSample(SampleRevision.What what, long revision, Occasion occasion,
                                       Optional<String> cause) {
        return new InputChange(Input.SAMPLE, revision, what.words(), occasion, cause);
    }

    /** A further statement of the alloy by the lab. */
    public static InputChange ofAlloy(String alloy, long revision, Occasion occasion) {
        return new InputChange(Input.ALLOY, revision, ALLOY_STATED, occasion, Optional.of(alloy));
    }
}
