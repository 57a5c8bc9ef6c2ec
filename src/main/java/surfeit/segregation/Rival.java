package surfeit.segregation;

import java.util.OptionalDouble;

/**
 * Another cause that could have made the same numbers, weighed.
 *
 * @param cause          what else it could be
 * @param couldExplain   whether it alone could make the shift
 * @param largestFactor  the largest apparent enrichment factor it could make (above 1), or the smallest (below 1)
 * @param assumes        what the estimate takes for granted, or which field would settle it
 * @param howToRuleOut   what to measure or check
 * @param source         where the estimate comes from
 */
public record Rival(String cause, CouldExplain couldExplain, OptionalDouble largestFactor, String assumes,
                    String howToRuleOut, String source) {
    /** Strength of a rival explanation, weakest first. */
    public enum CouldExplain {
        NO("no"),
        IN_PART("in part"),
        YES("yes");

        private final String word;

        CouldExplain(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
