package surfeit.xray;

/**
 * A film of known material and thickness lying on a surface: coating, oil, native oxide.
 *
 * <pre>   transmission T = exp(-mu rho t / sin psi) </pre>
 *
 * mu cm²/g of the film for the line, rho t its mass thickness in g/cm², psi take-off angle. What the film itself emits
 * is {@link FilmSignal}. Immutable, thread-safe.
 */
public record ThinFilm(Material material, double thicknessNm) {
    private static final double MOST_NM = 1e5;

    public ThinFilm {
        if (!(thicknessNm >= 0 && thicknessNm <= MOST_NM)) {
            throw new IllegalArgumentException("Film thickness is " + thicknessNm + " nm, must lie in 0 to "
                + MOST_NM + " nm.");
        }
    }

    /** Mass thickness, g/cm². */
    public double massThickness() {
        return material.massDepth(thicknessNm);
    }

    /** Share (0 to 1) of a line from below that gets through the film. */
    public double transmission(Line line, double takeOffDeg) {
        return Math.exp(-Absorption.chi(line, material, takeOffDeg) * massThickness());
    }
}
