package surfeit.xray;

/**
 * How wide the detector draws a line: its energy resolution, stated as usual at Mn Ka.
 *
 * <pre>   FWHM(E) = sqrt(2.5 (E - 5895 eV) + FWHM_Mn²) eV </pre>
 *
 * Below about 0.3 keV the formula runs too narrow, or has no root; the width is then held at 40 eV and
 * {@link #clamped} says so (real detectors show 50 to 60 eV at C Ka). Fiori &amp; Newbury, SEM/1978/I, 401, from
 * memory. 125 to 135 eV is usual today, 135 to 165 eV for older detectors (from memory). Immutable, thread-safe.
 */
public record Resolution(double fwhmAtMnKaEv) {
    public static final double REFERENCE_EV = 5895;
    public static final double LEAST_FWHM_EV = 40;
    /** Taken where the analyst states none. */
    public static final Resolution USUAL = new Resolution(130);
    private static final double EV_PER_EV = 2.5;
    private static final double EV_PER_KEV = 1000;

    public Resolution {
        if (!(fwhmAtMnKaEv >= 100 && fwhmAtMnKaEv <= 300)) {
            throw new IllegalArgumentException("Detector resolution at Mn Ka is " + fwhmAtMnKaEv
                + " eV, must lie in 100 to 300 eV.");
        }
    }

    /** Full width at half maximum at a line energy, eV; never under 40. */
    public double fwhmEv(double energyKev) {
        return clamped(energyKev) ? LEAST_FWHM_EV : Math.sqrt(squared(energyKev));
    }

    /** Whether the formula fails at this energy and the least width stands in for it. */
    public boolean clamped(double energyKev) {
        return squared(energyKev) < LEAST_FWHM_EV * LEAST_FWHM_EV;
    }

    private double squared(double energyKev) {
        return EV_PER_EV * (energyKev * EV_PER_KEV - REFERENCE_EV) + fwhmAtMnKaEv * fwhmAtMnKaEv;
    }
}
