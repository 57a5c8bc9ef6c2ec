package surfeit.segregation.answer;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.rival.Rival;

/**
 * What one group of spots shows.
 *
 * @param by              how it was put together
 * @param name            the lab's word for it, with the beam energy or session where these split it
 * @param spotCount       spots in it
 * @param particles       names of its particles; a spot without a particle belongs to one unnamed particle
 * @param beamEnergyKev   beam energy of its spots, if stated and one
 * @param sessions        sessions of its spots
 * @param scope           what its verdicts speak about
 * @param weakTwoParticles true where the scope is particles and only two were measured
 * @param elements        one finding per closed element, in the order of the nominal
 * @param notMeasured     elements of the nominal that no spot lists; dropped from data and nominal
 * @param explanationSet  elements each of which alone could have changed so that the rest follows by closing;
 *                        empty optional where the question does not arise (two elements, nothing flagged)
 * @param ratios          ratios to one element that cannot explain it, if there are three or more elements
 * @param jointTest       all elements at once against the scatter of particles, where there are enough of these
 * @param foreign         elements found outside the nominal
 * @param reference       what the reference spots did, if there were any in its session
 * @param rivals          other causes that could have made the same numbers, strongest first
 * @param caveats         what a reader must know about this group
 * @param phaseReading    what it says of the alloy's phases, if any are known
 * @param skinLimit       how thick a skin of its composition the nominal allows, for a particle of known diameter with
 *                        something enriched
 */
public record GroupFinding(GroupBy by, String name, long spotCount, List<String> particles,
                           OptionalDouble beamEnergyKev, List<String> sessions, Scope scope, boolean weakTwoParticles,
                           List<ElementFinding> elements, List<Element> notMeasured,
                           Optional<List<Element>> explanationSet, Optional<ElementRatios> ratios,
                           Optional<JointTest> jointTest, List<ForeignElement> foreign,
                           Optional<ReferenceUse> reference, List<Rival> rivals, List<Caveat> caveats,
                           Optional<PhaseReading> phaseReading, Optional<SkinLimit> skinLimit) {
}
