package surfeit.xray;

import surfeit.element.Element;

/**
 * An analytical line as the workstation lists it: Ka, La or Ma of one element, with its own absorption edge.
 *
 * <p>Energies in keV; Ka is the mean of Ka1 and Ka2 weighted by intensity. The fluorescence yield is that of the
 * edge's subshell (0 to 1). Immutable, thread-safe. Numbers: Elam, Ravel &amp; Sieber, Radiat. Phys. Chem. 63 (2002)
 * 121-128, through XrayDB; M lines lie a few eV low there (see {@link BookletEnergies}).
 */
public record Line(Element element, Family family, String name, double energyKev, String edge, double edgeEnergyKev,
                   double fluorescenceYield) {

    public Line {
        if (!(energyKev > 0) || !(edgeEnergyKev >= energyKev)) {
            throw new IllegalArgumentException("Line " + element + " " + name + " needs 0 < line energy <= edge energy,"
                + " got " + energyKev + " and " + edgeEnergyKev + " keV.");
        }
        if (!(fluorescenceYield >= 0 && fluorescenceYield <= 1)) {
            throw new IllegalArgumentException("Fluorescence yield of " + element + " " + name + " is "
                + fluorescenceYield + ", must lie in 0 to 1.");
        }
    }

    /** Beam energy over the energy of the line's own edge, U = E0/Ec. The line is excited where U exceeds 1. */
    public double overvoltage(double beamEnergyKev) {
        return beamEnergyKev / edgeEnergyKev;
    }

    /** Symbol and line, as in {@code Cu Ka}. */
    public String label() {
        return element.symbol() + " " + name;
    }

    @Override
    public String toString() {
        return label();
    }
}
