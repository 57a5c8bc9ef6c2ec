package surfeit.xray;

import surfeit.element.Element;

/**
 * One transition of the full line list, for example Cu Lb1, with its share within its own subshell.
 *
 * <p>{@code share} is the branching share among all transitions that fill the same subshell (the shares of one
 * element and edge add up to 1): there is no common "alpha = 100" scale. Immutable, thread-safe.
 * Numbers: Elam, Ravel &amp; Sieber, Radiat. Phys. Chem. 63 (2002) 121-128, through XrayDB.
 */
public record Emission(Element element, String name, String iupacName, double energyKev, double share, String edge,
                       double edgeEnergyKev, double fluorescenceYield) {

    public Emission {
        if (!(energyKev > 0) || !(edgeEnergyKev > 0) || !(share >= 0)) {
            throw new IllegalArgumentException("Line " + element + " " + name + " needs positive energies and a share"
                + " of 0 or more, got " + energyKev + " keV, edge " + edgeEnergyKev + " keV, share " + share + ".");
        }
    }

    /** The trade's name of the peak this transition is part of: Ka1 and Ka2 are Ka, Kb1 and Kb3 Kb, La1 and La2 La. */
    String peakName() {
        return switch (name) {
            case "Ka1", "Ka2" -> "Ka";
            case "Kb1", "Kb3" -> "Kb";
            case "La1", "La2" -> "La";
            default -> name;
        };
    }
}
