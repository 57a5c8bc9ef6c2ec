package surfeit.segregation.contrast;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.segregation.nominal.Comparison;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.sums.GroupData;
import surfeit.segregation.uncertainty.CalibrationError;
import surfeit.segregation.uncertainty.GroupRuns;
import surfeit.segregation.uncertainty.ReferenceCorrection;

/**
 * One side of a contrast: a group with its sums, and the calibration error they carry.
 *
 * @param name          what the side is called in the contrast
 * @param runs          sums per particle (or per session where sessions are the unit)
 * @param unitsAreNamed true where the particles' names tell them apart, so that pairs can be found
 */
public record ContrastSide(String name, List<Element> elements, GroupRuns runs, boolean unitsAreNamed,
                           OptionalDouble beamEnergyKev, Optional<String> session, boolean severalSessions,
                           CalibrationError calibration) {

    /** A group as measured: within a session the calibration error cancels without reference spots. */
    public static ContrastSide asMeasured(String name, GroupAnalysis analysis) {
        return of(name, analysis, analysis.data().units(), Optional.empty());
    }

    /** A group as its own answer has it: corrected by the reference spots of its session where these were used. */
    public static ContrastSide asAnswered(String name, GroupAnalysis analysis) {
        return of(name, analysis, analysis.units(), analysis.comparison().reference());
    }

    private static ContrastSide of(String name, GroupAnalysis analysis, GroupRuns runs,
                                   Optional<ReferenceCorrection> reference) {
        GroupData data = analysis.data();
        Comparison comparison = analysis.comparison();
        return new ContrastSide(name, data.elements(), runs, !data.sessionsAreUnits(), data.beamEnergyKev(),
            data.session(), data.sessionsAreUnits(),
            new CalibrationError(comparison.relative(), comparison.floor(), reference));
    }

    /** Whether every particle holds something of these elements, so that the side can be closed over them. */
    boolean holds(List<Element> common) {
        boolean[] kept = new boolean[elements.size()];
        for (int i = 0; i < kept.length; i++) {
            kept[i] = common.contains(elements.get(i));
        }
        return runs.leavesRest(kept);
    }

    /** The same side closed over fewer elements; it must hold some of them. */
    ContrastSide over(List<Element> common) {
        ContrastSide side = this;
        for (Element element : elements) {
            if (!common.contains(element)) {
                int at = side.elements.indexOf(element);
                List<Element> rest = side.elements.stream().filter(e -> !e.equals(element)).toList();
                side = new ContrastSide(name, rest, side.runs.withoutElement(at), unitsAreNamed, beamEnergyKev, session,
                    severalSessions, side.calibration.without(at));
            }
        }
        return side;
    }

    int particleCount() {
        return runs.first().particleCount();
    }

    boolean isCorrected() {
        return calibration.reference().isPresent();
    }

    /** Same session and beam energy, as far as stated: then most of the calibration error is common. */
    boolean sameRun(ContrastSide other) {
        return !severalSessions && !other.severalSessions && session.equals(other.session)
            && beamEnergyKev.equals(other.beamEnergyKev);
    }
}
