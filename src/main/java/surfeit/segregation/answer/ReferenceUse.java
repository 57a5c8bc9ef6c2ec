package surfeit.segregation.answer;

import java.util.List;
import surfeit.element.Element;

/**
 * What the reference spots of a session did for a group.
 *
 * @param used        true where the numbers were corrected with them
 * @param explanation what was done, or why not, in words
 * @param spotCount   reference spots
 * @param correlation correlation of the shared error taken between sample and reference
 * @param corrections per element: factor applied before closing, shared uncertainty (log odds) without and with it
 */
public record ReferenceUse(boolean used, String explanation, int spotCount, double correlation,
                           List<Correction> corrections) {

    /** Correction of one element. */
    public record Correction(Element element, boolean usable, double factor, double sharedUncertaintyBefore,
                             double sharedUncertaintyAfter, double randomUncertaintyAdded) {
    }
}
