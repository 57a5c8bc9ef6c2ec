package surfeit.xray;

import java.util.Map;
import java.util.Optional;

/**
 * What a film on a bulk surface adds to the reading of one of its elements, and how thick a film a reading means.
 *
 * <pre>
 *   linear: thin against the depth    k = C rho t phi0(substrate) / emitted(pure)
 *   integrated through the film       k = C int_0^{rho t} phi(substrate, z) e^(-chi_film z) dz / emitted(pure)
 *   extra mass fraction, linear       C rho t phi0(substrate) / emitted(substrate)
 * </pre>
 *
 * C mass fraction of the element in the film, rho t the mass thickness in g/cm², phi0 and emitted as in
 * {@link DepthProfile}, k the intensity over that of the bulk pure element. The extra falls as the beam energy rises:
 * two beam energies tell a film from the bulk.
 *
 * <p>Against an independent Monte Carlo the linear formula read 0.91 to 1.11 of the truth for a film lighter than its
 * substrate of up to a quarter of the mean depth (0.85 at overvoltage 2.7), but 0.64 to 0.88 for gold on silicon:
 * there it only bounds, and beyond those thicknesses it is refused. The integrated one read 0.85 to 1.14 throughout.
 * One value serves any thickness. Immutable, thread-safe.
 */
public record FilmSignal(Material film, Material substrate, Line line, DepthProfile profile, double filmChi,
                         double pureEmission, double substrateEmission) {
    /** A film counts as heavier than its substrate from this ratio of mean atomic numbers on (judgement). */
    public static final double HEAVY_RATIO = 1.25;
    /** Greatest mass thickness over the substrate's mean depth, as far as the comparison went (0.22 and 0.51). */
    public static final double LIGHT_REACH = 0.25;
    public static final double HEAVY_REACH = 0.52;
    /** The same for a thickness read back from a ratio, which reads up to 1.17 times the truth. */
    public static final double READ_BACK_REACH = 0.6;
    static final double INTEGRATED_LOW = 0.85;
    static final double INTEGRATED_HIGH = 1.15;

    /** What the linear formula is worth for a film on a substrate. */
    public enum Applicability {
        /** An estimate with bounds. */
        LINEAR,
        /** The formula reads low; only the bounds mean something. */
        BOUND_ONLY,
        /** The film is too thick for it. */
        REFUSED
    }

    /** The signal of a line of the film's (or the substrate's) element at a beam energy and take-off angle. */
    public static FilmSignal of(Material film, Material substrate, Line line, double beamEnergyKev, double takeOffDeg,
                                ProfileCache profiles) {
        Material pure = Material.of(Map.of(line.element(), 1.0), 1);
        DepthProfile profile = profiles.profile(substrate, line, beamEnergyKev);
        return new FilmSignal(film, substrate, line, profile, Absorption.chi(line, film, takeOffDeg),
            profiles.profile(pure, line, beamEnergyKev).emitted(Absorption.chi(line, pure, takeOffDeg)),
            profile.emitted(Absorption.chi(line, substrate, takeOffDeg)));
    }

    /** What the linear formula is worth at a mass thickness in g/cm². */
    public Applicability applicability(double massThickness) {
        if (massThickness > (heavy() ? HEAVY_REACH : LIGHT_REACH) * profile.meanMassDepth()) {
            return Applicability.REFUSED;
        }
        return heavy() ? Applicability.BOUND_ONLY : Applicability.LINEAR;
    }

    /** k of the film over the bulk pure element (linear); empty where the film is too thick. */
    public Optional<Estimate> ratio(double massThickness) {
        return linear(massThickness, pureEmission);
    }

    /** Mass fraction the film seems to add to the substrate (linear); empty where the film is too thick. */
    public Optional<Estimate> extraMassFraction(double massThickness) {
        return linear(massThickness, substrateEmission);
    }

    /** k with the rise of generation through the film and the film's own absorption; within 15 % in all comparisons. */
    public double integratedRatio(double massThickness) {
        return fraction() * profile.emittedFromTop(check(massThickness), filmChi) / pureEmission;
    }

    /** The same with its bounds. */
    Estimate integrated(double massThickness) {
        return Estimate.ofRatios(integratedRatio(massThickness), INTEGRATED_LOW, INTEGRATED_HIGH);
    }

    /**
     * Mass thickness in g/cm² that gives a measured k, by the integrated formula; bounds from 0.85 k and 1.15 k.
     *
     * <p>Empty where the film is thicker than the comparison reached, or k more than any film can give.
     * @throws IllegalArgumentException where k is negative or the film lacks the line's element
     */
    public Optional<Estimate> massThickness(double k) {
        if (!(k >= 0) || !(fraction() > 0)) {
            throw new IllegalArgumentException("Expected a ratio of 0 or more and a film that holds " + line.element()
                + ", got k = " + k + " and a mass fraction of " + fraction() + ".");
        }
        double full = fraction() * profile.emitted(filmChi) / pureEmission;
        if (k * INTEGRATED_HIGH >= full) {
            return Optional.empty();
        }
        double value = depthOf(k / full);
        return value > READ_BACK_REACH * profile.meanMassDepth() ? Optional.empty()
            : Optional.of(new Estimate(value, depthOf(k * INTEGRATED_LOW / full), depthOf(k * INTEGRATED_HIGH / full)));
    }

    private double depthOf(double share) {
        return share == 0 ? 0 : profile.massDepthOfShare(share, filmChi);
    }

    private Optional<Estimate> linear(double massThickness, double reference) {
        if (applicability(check(massThickness)) == Applicability.REFUSED) {
            return Optional.empty();
        }
        double signal = fraction() * massThickness * profile.surfaceIonisation() / reference;
        if (heavy()) {
            return Optional.of(Estimate.ofRatios(signal, 0.63, 1));
        }
        return Optional.of(Estimate.ofRatios(signal, ModelBounds.weak(profile) ? 0.84 : 0.91, 1.12));
    }

    private double fraction() {
        return film.massFraction(line.element());
    }

    private boolean heavy() {
        return film.meanAtomicNumber() > HEAVY_RATIO * substrate.meanAtomicNumber();
    }

    private static double check(double massThickness) {
        if (!(massThickness >= 0)) {
            throw new IllegalArgumentException("Mass thickness is " + massThickness + " g/cm2, must be 0 or more.");
        }
        return massThickness;
    }
}
