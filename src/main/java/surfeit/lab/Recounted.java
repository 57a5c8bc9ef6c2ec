package surfeit.lab;

import java.util.Optional;
import surfeit.segregation.answer.GroupBy;

/**
 * Kept sums beside a recount of the spots they were made from.
 *
 * @param spotCount  spots of the specimen recounted
 * @param sumCount   sums compared
 * @param difference the first sum that differs, in words
 */
public record Recounted(String sample, GroupBy by, State state, long spotCount, long sumCount,
                        Optional<String> difference) {

    /** What the recount showed. */
    public enum State {
        /** Every sum agrees. */
        EQUAL(true),
        /** Made with another setting, description, alloy or version of the program: no answer goes on from them. */
        UNUSED(true),
        /** The sample has more particles than sums are kept of. */
        NOT_KEPT(true),
        /** A sum is not what the spots give. */
        DIFFERENT(false),
        /** The bytes are not those that were written; no answer goes on from them. */
        DAMAGED(false);

        private final boolean right;

        State(boolean right) {
            this.right = right;
        }
    }

    /** False where something is not as this program wrote it. */
    public boolean isRight() {
        return state.right;
    }
}
