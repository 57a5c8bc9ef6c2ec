package surfeit.segregation.sums;

import java.util.List;
import surfeit.composition.Phase;
import surfeit.element.Element;

/**
 * The compositions one phase may have, over the closed elements of a group, as atomic fractions.
 *
 * <p>A phase is one composition; a solid solution on one element is a field, from its composition at the temperature
 * given to the pure element, since it rejects the others on cooling.
 */
public record PhaseField(Phase phase, double[] composition, double[] low, double[] high) {

    /** The fields of the phases that are made of these elements only. */
    public static List<PhaseField> over(List<Phase> phases, List<Element> elements) {
        return phases.stream().filter(phase -> TieLine.isOver(phase, elements))
            .map(phase -> of(phase, phase.over(elements).orElseThrow())).toList();
    }

    private static PhaseField of(Phase phase, double[] composition) {
        double[] low = composition.clone();
        double[] high = composition.clone();
        int main = 0;
        for (int i = 1; i < composition.length; i++) {
            main = composition[i] > composition[main] ? i : main;
        }
        for (int i = 0; i < composition.length && phase.isTerminal(); i++) {
            low[i] = i == main ? composition[i] : 0;
            high[i] = i == main ? 1 : composition[i];
        }
        return new PhaseField(phase, composition, low, high);
    }
}
