package surfeit.lab;

import java.util.Optional;

/**
 * One change of a sample's description or spots.
 *
 * @param number    its revision, from 1
 * @param what      what was done
 * @param occasion  by whom and when
 * @param link      id of the import or spot that was the cause, if one was
 * @param spotCount spots on record after it, without withdrawn ones
 */
public record SampleRevision(long number, What what, Occasion occasion, Optional<String> link, long spotCount) {
    /** Kinds of change. */
    public enum What {
        DESCRIBED("described"),
        SPOTS_IMPORTED("spots imported"),
        SPOT_CORRECTED("spot corrected"),
        SPOT_WITHDRAWN("spot withdrawn");

        private final String words;

        What(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
