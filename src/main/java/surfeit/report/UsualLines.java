package surfeit.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import surfeit.element.Element;
import surfeit.segregation.answer.Interpretation;
import surfeit.xray.BeamEnergy;
import surfeit.xray.Line;
import surfeit.xray.LineChoice;

/** Says which lines are usually taken at the beam energies of an answer, where its spots do not say it. */
final class UsualLines {
    private UsualLines() {
    }

    /**
     * One sentence; empty where every line was stated or no beam energy is known.
     *
     * @param stated symbols of the elements whose line was stated
     */
    static Optional<String> sentence(Interpretation interpretation, Set<String> stated) {
        List<Element> open = interpretation.nominalFractions().elements().stream()
            .filter(element -> !stated.contains(element.symbol())).toList();
        double[] energies = interpretation.groups().stream().flatMapToDouble(group -> group.beamEnergyKev().stream())
            .filter(BeamEnergy::holds).distinct().sorted().toArray();
        if (open.isEmpty() || energies.length == 0) {
            return Optional.empty();
        }
        List<String> parts = new ArrayList<>();
        for (double energy : energies) {
            List<String> lines = open.stream().map(element -> usual(element, energy)).toList();
            parts.add("at " + Digits.setting(energy) + " keV they are usually " + Listing.and(lines));
        }
        return Optional.of((stated.isEmpty() ? "The" : "Other") + " lines were not stated; " + String.join(", ", parts)
            + ".");
    }

    private static String usual(Element element, double energy) {
        return LineChoice.at(element, energy).chosen().map(Line::label)
            .orElse("none of " + element.symbol());
    }
}
