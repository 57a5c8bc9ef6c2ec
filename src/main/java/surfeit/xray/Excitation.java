package surfeit.xray;

/**
 * How well a beam energy excites a line, by the overvoltage U of the line's own edge.
 *
 * <p>Usable from 2, marginal from 1.5, barely excited above 1, not excited at 1 or below. Rule of thumb "at least
 * 1.5, better 2 to 3" from memory; U above 1.25 counts as selectable in Goldstein et al., Scanning Electron Microscopy
 * and X-Ray Microanalysis, 4th ed., fig. 22.3.
 */
public enum Excitation {
    USABLE, MARGINAL, BARELY_EXCITED, NOT_EXCITED;

    /** From here on a line is usable without reserve (from memory). */
    public static final double PREFERRED_OVERVOLTAGE = 2.0;
    /** Below this an analyst rejects the line unless the element has no other (from memory). */
    public static final double LEAST_OVERVOLTAGE = 1.5;
    /** At or below this the line is never used (Goldstein et al., 4th ed., fig. 22.3). */
    public static final double SELECTABLE_OVERVOLTAGE = 1.25;

    /** The state of a line at this beam energy. */
    public static Excitation of(Line line, double beamEnergyKev) {
        double overvoltage = line.overvoltage(beamEnergyKev);
        if (overvoltage >= PREFERRED_OVERVOLTAGE) {
            return USABLE;
        }
        if (overvoltage >= LEAST_OVERVOLTAGE) {
            return MARGINAL;
        }
        return overvoltage > 1 ? BARELY_EXCITED : NOT_EXCITED;
    }
}
