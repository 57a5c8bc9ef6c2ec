package surfeit.xray;

/** The beam energies the depth models hold for: 1 to 40 keV (range of the XPP model, from memory). */
public final class BeamEnergy {
    public static final double LOWEST_KEV = 1;
    public static final double HIGHEST_KEV = 40;

    private BeamEnergy() {
    }

    /** Whether the models hold for this energy. */
    public static boolean holds(double beamEnergyKev) {
        return beamEnergyKev >= LOWEST_KEV && beamEnergyKev <= HIGHEST_KEV;
    }

    /** The energy itself. @throws IllegalArgumentException outside 1 to 40 keV */
    public static double check(double beamEnergyKev) {
        if (!holds(beamEnergyKev)) {
            throw new IllegalArgumentException("Beam energy is " + beamEnergyKev + " keV, must lie in " + LOWEST_KEV
                + " to " + HIGHEST_KEV + " keV.");
        }
        return beamEnergyKev;
    }
}
