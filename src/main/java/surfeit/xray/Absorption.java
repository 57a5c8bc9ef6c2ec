package surfeit.xray;

/**
 * How much of a line's generated signal survives the way out through the material.
 *
 * <pre>   chi = mu / sin(psi),  f = emitted(chi) / emitted(0) </pre>
 *
 * mu cm²/g, psi take-off angle above the local surface. The factor f is the depth profile's own. Its bounds carry the
 * spread of absorption tables and the model's (see {@link ModelBounds}).
 */
public final class Absorption {

    private Absorption() {
    }

    /** Absorption path factor chi in cm²/g. @throws IllegalArgumentException where the surface hides the detector */
    public static double chi(double massAbsorption, double takeOffDeg) {
        if (!(takeOffDeg > 0 && takeOffDeg <= 90)) {
            throw new IllegalArgumentException("Effective take-off angle is " + takeOffDeg
                + " degrees, must lie above 0 and up to 90: at 0 or below the surface hides the detector.");
        }
        return massAbsorption / Math.sin(Math.toRadians(takeOffDeg));
    }

    /** chi of a line in a material, with the packaged mass absorption. */
    public static double chi(Line line, Material material, double takeOffDeg) {
        return chi(MassAbsorption.standard().coefficient(line, material), takeOffDeg);
    }

    /** Mass absorption coefficient of a material for a line in cm²/g, with the spread of the tables. */
    static Estimate coefficient(Line line, Material material) {
        double mu = MassAbsorption.standard().coefficient(line, material);
        double spread = MassAbsorption.relativeSpread(line);
        return new Estimate(mu, mu * (1 - spread), mu * (1 + spread));
    }

    /** Absorption factor of a line with its bounds. */
    public static Estimate factor(DepthProfile profile, Line line, Material material, double takeOffDeg) {
        double chi = chi(line, material, takeOffDeg);
        double spread = MassAbsorption.relativeSpread(line);
        return ModelBounds.absorption(profile, 1 - profile.absorptionFactor(chi),
            1 - profile.absorptionFactor(chi * (1 - spread)), 1 - profile.absorptionFactor(chi * (1 + spread)));
    }
}
