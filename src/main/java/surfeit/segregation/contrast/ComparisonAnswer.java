package surfeit.segregation.contrast;

import java.util.List;
import surfeit.element.Element;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.Interpretation;

/**
 * Two samples against each other, feature by feature and element by element: as made against treated, lot against lot.
 *
 * @param nameA           the lab's name of the first sample; in every contrast "higher" means higher in this one
 * @param nameB           name of the second
 * @param by              how the spots were put together
 * @param sameParticles   true where the lab said that particles of the same name are the very same ones measured again
 * @param marginOddsRatio odds ratio up to which a difference does not matter: the smaller of both samples' margins
 * @param alpha           risk of a false flag over all of this answer: the smaller of both samples'
 * @param detectionLimitMassFraction limit taken for "not detected" without a stated limit
 * @param elements        elements both nominals have; every spot was closed over these alone
 * @param onlyInA         elements only the first nominal has, left out here
 * @param onlyInB         elements only the second nominal has, left out here
 * @param a               the first sample against its own nominal, with the factor of every element
 * @param b               the second sample against its own nominal
 * @param features        one comparison per feature, in the order of the first sample, then those only the second has
 * @param caveats         what a reader must know about the whole comparison
 */
public record ComparisonAnswer(String nameA, String nameB, GroupBy by, boolean sameParticles, double marginOddsRatio,
                               double alpha, double detectionLimitMassFraction, List<Element> elements,
                               List<Element> onlyInA, List<Element> onlyInB, Interpretation a, Interpretation b,
                               List<FeatureComparison> features, List<Caveat> caveats) {
}
