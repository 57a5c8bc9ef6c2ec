package surfeit.xray;

import java.util.Comparator;
import java.util.List;
import surfeit.element.Element;

/**
 * What an EDS detector sees as one line: unresolvable doublets (Ka1 and Ka2, Kb1 and Kb3, La1 and La2) as one.
 *
 * <p>The energy is that of the strongest member, named by {@code strongestMember}; the share is the members' sum.
 * Immutable, thread-safe.
 */
public record Peak(Element element, String name, String strongestMember, double energyKev, double share, String edge,
                   double edgeEnergyKev, double fluorescenceYield) {

    /** Exponent of the intensity law in {@link #generatedStrength}: the middle of 1.3 to 1.7, from memory. */
    private static final double INTENSITY_EXPONENT = 1.5;

    /** The peak made of these transitions of one element and edge. */
    static Peak of(List<Emission> members) {
        Emission strongest = members.stream().max(Comparator.comparingDouble(Emission::share)).orElseThrow();
        double share = members.stream().mapToDouble(Emission::share).sum();
        return new Peak(strongest.element(), strongest.peakName(), strongest.name(), strongest.energyKev(), share,
            strongest.edge(), strongest.edgeEnergyKev(), strongest.fluorescenceYield());
    }

    /**
     * Generated intensity per mass fraction, on one rough scale for all lines of all elements; 0 when not excited.
     *
     * <pre>    n w s (U - 1)^1.5 / A </pre>
     *
     * n electrons of the subshell, w its fluorescence yield, s the peak's share within it, U = E0/Ec, A g/mol.
     * Neglects absorption, detector efficiency and Coster-Kronig transfer: good to a factor of about three, enough to
     * tell a peak that matters from one that cannot be seen. Law (U - 1)^n with n 1.3 to 1.7 from memory.
     */
    public double generatedStrength(double beamEnergyKev) {
        double overvoltage = beamEnergyKev / edgeEnergyKev;
        if (!(overvoltage > 1)) {
            return 0;
        }
        return electrons(edge) * fluorescenceYield * share * Math.pow(overvoltage - 1, INTENSITY_EXPONENT)
            / element.atomicWeight();
    }

    /** Symbol and peak, as in {@code Au Ma}; M gamma is spelt out, lest Mg be taken for magnesium. */
    public String label() {
        return element.symbol() + " " + (name.equals("Mg") ? "Mgamma" : name);
    }

    private static int electrons(String edge) {
        return switch (edge) {
            case "L3", "M3", "M4" -> 4;
            case "M5" -> 6;
            default -> 2;
        };
    }
}
