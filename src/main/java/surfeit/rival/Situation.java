package surfeit.rival;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.preparation.Handling;
import surfeit.spot.Position;
import surfeit.spot.Sample;

/**
 * A group whose shifts ask for an explanation, and everything known that may explain them.
 *
 * <p>The arrays are read only. Not changed after it was made.
 *
 * @param group         the group's name
 * @param labelled      true where the lab gave it a feature of its own
 * @param elements      closed elements, in the order of the arrays
 * @param nominal       the nominal over them, at the middle of any ranges; closed atomic fractions
 * @param mean          the group's mean over them, closed atomic fractions
 * @param shifts        what asks for an explanation
 * @param beamEnergyKev its beam energy, if stated
 * @param particles     units that repeat
 * @param evidence      what its spots say beside
 * @param others        the other groups of the answer over the same elements
 * @param missing       elements of the nominal that were not closed over, with their nominal mass fractions
 * @param sample        how the sample was made and measured
 * @param handling      the words of its preparation that are known
 * @param nominalBasis  what the nominal was stated in
 */
public record Situation(String group, boolean labelled, List<Element> elements, double[] nominal, double[] mean,
                        List<Shift> shifts, OptionalDouble beamEnergyKev, int particles, Evidence evidence,
                        List<Other> others, Map<Element, Double> missing, Sample sample, Handling handling,
                        Basis nominalBasis) {

    /** Another group of the same answer; its mean is over the same elements; {@code sameFeature}: by the lab's word. */
    public record Other(String group, boolean sameFeature, double[] mean, OptionalDouble beamEnergyKev,
                        Set<String> sessions, Set<Position> positions) {
        public Other {
            sessions = Set.copyOf(sessions);
            positions = Set.copyOf(positions);
        }
    }

    public Situation {
        if (nominal.length != elements.size() || mean.length != elements.size()) {
            throw new IllegalArgumentException("Nominal and mean have one value for each of " + elements.size()
                + " elements, got " + nominal.length + " and " + mean.length + ".");
        }
        elements = List.copyOf(elements);
        shifts = List.copyOf(shifts);
        others = List.copyOf(others);
    }

    /** The shift furthest from nominal, for causes that concern the whole group; there must be one. */
    Shift leading() {
        Shift leading = shifts.get(0);
        for (Shift shift : shifts) {
            leading = shift.size() > leading.size() ? shift : leading;
        }
        return leading;
    }
}
