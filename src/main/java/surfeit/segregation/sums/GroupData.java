package surfeit.segregation.sums;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.segregation.uncertainty.GroupRuns;

/**
 * One group of spots, summed up and ready to be compared.
 *
 * @param name           the group's name in the answer
 * @param baseName       the lab's word for it, without beam energy or session
 * @param elements       elements closed over, in the order of the nominal
 * @param notMeasured    elements of the nominal that no spot lists
 * @param units          the units that repeat: particles, or sessions where there are three or more
 * @param particles      the same spots by particle
 * @param corrected      the particles after correction by reference spots, if any fit
 * @param offer          what the reference spots offer; its explanation is empty where there are none
 * @param sessionsAreUnits true where sessions, not particles, are the unit that repeats
 * @param zeroIsNumber   true where the group holds negative values, so that zero is a number like any other
 * @param below          per element: spots below the limit, largest closed limit, whether it was assumed
 * @param phases         where the spots lie between the phases of their alloy
 */
public record GroupData(String name, String baseName, OptionalDouble beamEnergyKev, Optional<String> session,
                        List<Element> elements, List<Element> notMeasured, GroupRuns units, GroupRuns particles,
                        Optional<GroupRuns> corrected, References.Offer offer, boolean sessionsAreUnits,
                        List<Below> below, GroupFacts facts, ForeignTally foreign, boolean zeroIsNumber,
                        PhaseTally phases) {

    /** How often and under which limit one element was not found. */
    public record Below(long count, double highestLimit, boolean assumed) {
    }
}
