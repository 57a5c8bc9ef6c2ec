package surfeit.segregation;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;

/**
 * One side of a contrast: a group with its uncorrected sums; the calibration error cancels without reference spots.
 *
 * @param runs          sums per particle (or per session where sessions are the unit)
 * @param unitsAreNamed true where the particles' names tell them apart, so that pairs can be found
 */
record ContrastSide(String name, List<Element> elements, GroupRuns runs, boolean unitsAreNamed,
                    OptionalDouble beamEnergyKev, Optional<String> session, boolean severalSessions, AdditiveFloor floor) {

    static ContrastSide of(GroupAnalysis analysis) {
        GroupData data = analysis.data();
        return new ContrastSide(data.name(), data.elements(), data.units(), !data.sessionsAreUnits(), data.beamEnergyKev(),
            data.session(), data.sessionsAreUnits(), analysis.comparison().floor());
    }

    /** The same side closed over fewer elements. */
    ContrastSide over(List<Element> common) {
        ContrastSide side = this;
        for (Element element : elements) {
            if (!common.contains(element)) {
                int at = side.elements.indexOf(element);
                List<Element> rest = side.elements.stream().filter(e -> !e.equals(element)).toList();
                side = new ContrastSide(name, rest, side.runs.withoutElement(at), unitsAreNamed, beamEnergyKev, session,
                    severalSessions, side.floor.without(at));
            }
        }
        return side;
    }

    /** Same session and beam energy, as far as stated: then most of the calibration error is common. */
    boolean sameRun(ContrastSide other) {
        return !severalSessions && !other.severalSessions && session.equals(other.session)
            && beamEnergyKev.equals(other.beamEnergyKev);
    }
}
