package surfeit.segregation.answer;

import java.util.OptionalDouble;
import surfeit.element.Element;

/**
 * An element that was found but is not in the nominal, as its share of everything reported and not excluded.
 *
 * @param mean          mean atomic fraction; spots that do not list it count as below their limit, as zero here
 * @param low           lower end of its 95 % interval, cut at 0
 * @param high          upper end, cut at 1
 * @param detectionLimit limit used to call it present, as an atomic fraction
 * @param limitAssumed  true where that limit was assumed
 * @param present       true where the lower end is above 0 and the mean above the limit
 * @param spotCount     spots that report a number for it
 */
public record ForeignElement(Element element, double mean, OptionalDouble low, OptionalDouble high,
                             double detectionLimit, boolean limitAssumed, boolean present, long spotCount) {
}
