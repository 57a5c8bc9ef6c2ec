package surfeit.rival;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;

/**
 * Another cause that could have made the same numbers, weighed. Immutable, thread-safe.
 *
 * @param code           which cause, by its stable code
 * @param cause          what else it could be, in words that name line, material or group
 * @param element        the element whose shift it was weighed for; empty where it concerns the whole group
 * @param couldExplain   whether it alone could make the shift
 * @param largestFactor  the largest apparent enrichment factor it could make (above 1), or the smallest (below 1);
 *                       empty where nothing bounds it or it is no matter of size
 * @param assumes        what the estimate takes for granted
 * @param howToRuleOut   what to measure or check
 * @param needs          fields of the sample or its spots that would settle it, as they are named in a request
 * @param source         where the estimate comes from
 */
public record Rival(Cause code, String cause, Optional<Element> element, CouldExplain couldExplain,
                    OptionalDouble largestFactor, String assumes, String howToRuleOut, List<String> needs,
                    String source) {
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

    public Rival {
        needs = List.copyOf(needs);
    }
}
